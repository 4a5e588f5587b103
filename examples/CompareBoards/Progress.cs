using McuBench.Core.Conclusions;
using Spectre.Console;

namespace CompareBoards;

/// <summary>Shows on the error stream how far long work has come, where somebody sits before it.</summary>
internal sealed class Progress : IProgress<ConclusionProgress>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(0.7);

    private readonly IAnsiConsole console;
    private readonly long start = TimeProvider.System.GetTimestamp();
    private (ConclusionStage Stage, int Percent)? shown;

    private Progress(IAnsiConsole console) => this.console = console;

    /// <summary>Progress on the error stream, or null where it does not lead to a terminal.</summary>
    public static Progress? Shown()
    {
        if (Console.IsErrorRedirected)
        {
            return null;
        }

        var terminal = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Error) });
        return terminal.Profile.Capabilities.Ansi ? new Progress(terminal) : null;
    }

    /// <inheritdoc/>
    public void Report(ConclusionProgress value)
    {
        // Short work is done before anybody could read of it.
        if (TimeProvider.System.GetElapsedTime(start) < Patience)
        {
            return;
        }

        var percent = value.Total == 0 ? 100 : (int)(100L * value.Done / value.Total);
        if (shown == (value.Stage, percent))
        {
            return;
        }

        shown = (value.Stage, percent);
        console.Write(new ControlCode("\r\u001b[K"));
        var isLast = value.Stage == ConclusionStage.Review && value.Done == value.Total;
        if (!isLast)
        {
            console.Write(
                new Text(
                    FormattableString.Invariant($"{Words(value.Stage)}: {percent} %"),
                    new Style(foreground: Color.Grey)
                )
            );
        }
    }

    private static string Words(ConclusionStage stage) =>
        stage switch
        {
            ConclusionStage.Summaries => "Summing up each setup",
            ConclusionStage.Clocks => "Splitting run times by clock",
            ConclusionStage.Comparisons => "Comparing pairs of setups",
            _ => "Reviewing the data",
        };
}
