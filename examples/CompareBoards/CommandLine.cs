using System.CommandLine;
using System.CommandLine.Parsing;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using UnitsNet;

namespace CompareBoards;

/// <summary>The command line: what may stand on it, and what it means.</summary>
public static class CommandLine
{
    /// <summary>The folder that a report goes to unless another is given, below the current one.</summary>
    public const string DefaultFolder = "compare-boards-report";

    private const string StudyFileName = "study.json";

    private static readonly Argument<string?> Study = new("study")
    {
        Description =
            $"A study file, a report.html that encloses one, or a folder that holds a {StudyFileName}. Without it the shipped demo study, which is invented.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private static readonly Option<string> Out = new("--out", "-o")
    {
        Description = "The folder for report.html and the charts; made where there is none.",
        HelpName = "DIR",
        DefaultValueFactory = _ => DefaultFolder,
    };

    private static readonly Option<Ratio?> Margin = new("--margin")
    {
        Description =
            "The difference that does not matter to you, such as 2%: setups closer than this can be found equal.",
        HelpName = "PERCENT",
        Arity = ArgumentArity.ExactlyOne,
        CustomParser = Percent,
    };

    private static readonly Option<Ratio?> Confidence = new("--confidence")
    {
        Description = "The confidence of every interval. [default: 95%]",
        HelpName = "PERCENT",
        Arity = ArgumentArity.ExactlyOne,
        CustomParser = Percent,
    };

    private static readonly RootCommand Root = new(
        "Compares microcontroller boards: reads a study, prints a summary, and writes a report with charts."
    )
    {
        Study,
        Out,
        Margin,
        Confidence,
    };

    /// <summary>Reads the command line; null where it asked for help or the version, which then was printed.</summary>
    /// <exception cref="BadInputException">It can't be taken as it is.</exception>
    public static Request? Read(IReadOnlyList<string> args, TextWriter output)
    {
        var parsed = Root.Parse(args);

        // An option without its value also leaves words over, which would be the less helpful thing to name.
        if (parsed.Errors.OrderByDescending(error => error.SymbolResult is OptionResult).FirstOrDefault() is { } first)
        {
            throw new BadInputException($"{first.Message.TrimEnd('.')}. See --help.");
        }

        if (parsed.Action is not null)
        {
            _ = parsed.Invoke(new InvocationConfiguration { Output = output });
            return null;
        }

        var folder = parsed.GetValue(Out);
        if (string.IsNullOrWhiteSpace(folder))
        {
            throw new BadInputException("--out must name a folder; it was empty. See --help.");
        }

        return new Request(
            FileOf(parsed.GetValue(Study)),
            folder,
            Options(parsed.GetValue(Confidence), parsed.GetValue(Margin))
        );
    }

    private static string FileOf(string? study) =>
        study switch
        {
            null => Path.Combine(AppContext.BaseDirectory, "demo", StudyFileName),
            _ when study.StartsWith('-') => throw new BadInputException($"There is no option {study}. See --help."),
            _ when Directory.Exists(study) => Path.Combine(study, StudyFileName),
            _ => study,
        };

    private static ConclusionOptions Options(Ratio? confidence, Ratio? margin)
    {
        try
        {
            var options = new ConclusionOptions { Margin = margin };
            return confidence is { } level ? options with { Confidence = level.DecimalFractions } : options;
        }
        catch (ArgumentException refusal)
        {
            // The library's own words, without the parameter's name that .NET puts behind them.
            throw new BadInputException(refusal.Message.Split(" (Parameter")[0], refusal);
        }
    }

    private static Ratio? Percent(ArgumentResult argument)
    {
        var text = argument.Tokens.Single().Value;
        if (QuantityText.TryParseRatio(text, out var share, out _))
        {
            return share;
        }

        argument.AddError(
            $"{((OptionResult)argument.Parent!).Option.Name} must be a number of percent, such as 2%; was \"{text}\""
        );
        return null;
    }
}
