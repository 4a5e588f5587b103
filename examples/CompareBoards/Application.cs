using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Studies;

namespace CompareBoards;

/// <summary>The main job: a study in, a summary and a report with charts out.</summary>
public static class Application
{
    /// <summary>Runs the program.</summary>
    /// <param name="args">The command line.</param>
    /// <param name="output">For the summary.</param>
    /// <param name="error">For what went wrong, one line each.</param>
    /// <param name="progress">Told how far the work has come, or null.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static int Run(
        IReadOnlyList<string> args,
        TextWriter output,
        TextWriter error,
        IProgress<ConclusionProgress>? progress,
        CancellationToken cancellationToken
    )
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(error);
        try
        {
            if (CommandLine.Read(args, output) is { } request)
            {
                Compare(request, output, error, progress, cancellationToken);
            }

            return ExitCode.Done;
        }
        catch (Exception fault) when (fault is BadInputException or StudyFormatException)
        {
            Say(error, fault.Message);
            return ExitCode.BadInput;
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            Say(error, "Stopped; no report was written.");
            return ExitCode.Cancelled;
        }
#pragma warning disable CA1031 // Whatever else went wrong: the user gets one line, not a stack of the program's inside.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Say(error, $"Unexpected: {fault.Message} ({fault.GetType().Name})");
            return ExitCode.Unexpected;
        }
    }

    private static void Compare(
        Request request,
        TextWriter output,
        TextWriter error,
        IProgress<ConclusionProgress>? progress,
        CancellationToken cancellationToken
    )
    {
        var study = Read(request.StudyFile);
        var conclusions = StudyConclusions.Of(study, request.Options, progress, cancellationToken);
        var report = ComparisonReport.Of(conclusions, cancellationToken);
        report.WriteTo(request.Folder);
        report.PrintSummary(output);
        output.Write($"\nWrote {report.Contents} to {Path.GetFullPath(request.Folder)}\n");
        if (report.Missing is { } missing)
        {
            Say(error, missing);
        }
    }

    private static Study Read(string file)
    {
        try
        {
            if (!Path.GetExtension(file).Equals(".html", StringComparison.OrdinalIgnoreCase))
            {
                return StudyFile.Read(file);
            }

            using var page = File.OpenRead(file);
            return EnclosedStudy.Read(page, Path.GetFileName(file));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(fault.Message, fault);
        }
    }

    private static void Say(TextWriter error, string message) =>
        error.Write($"compare-boards: {string.Concat(message.Select(c => char.IsControl(c) ? ' ' : c))}\n");
}
