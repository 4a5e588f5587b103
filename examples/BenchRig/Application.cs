using System.CommandLine;
using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using Spectre.Console;

namespace BenchRig;

/// <summary>The commands and what they do.</summary>
public static class Application
{
    /// <summary>Runs the program.</summary>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(string[] args, CancellationToken cancellationToken)
    {
        try
        {
            var parsed = Commands().Parse(args);
            if (parsed.Errors.Count > 0)
            {
                throw new RigException(ExitCode.BadInput, $"{parsed.Errors[^1].Message.TrimEnd('.')}. See --help.");
            }

            return await parsed
                .InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false }, cancellationToken)
                .ConfigureAwait(false);
        }
        catch (RigException fault)
        {
            return Say(fault.Message, fault.ExitCode);
        }
        catch (OperationCanceledException)
        {
            return Say("Stopped. What was acknowledged is in the journal; start again to go on.", ExitCode.Cancelled);
        }
#pragma warning disable CA1031 // Whatever else went wrong: the user gets one line, not a stack of the program's inside.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return Say($"Unexpected: {fault.Message} ({fault.GetType().Name})", ExitCode.Unexpected);
        }
    }

    private static RootCommand Commands()
    {
        var rig = new Argument<string>("rig")
        {
            Description = "The rig's file: which study, how closely, which ports.",
        };
        var journal = Path("--journal", "Where every trial is kept; gone on with where it is there.", "bench.jsonl");
        var study = Path("--out", "Where the study goes in the end.", "study.json");
        var folder = Path("--folder", "A folder to work in; made where there is none.", "bench-rig");
        var goOn = new Option<bool>("--go-on") { Description = "Don't stop for outliers and drift; note them." };
        var plain = new Option<bool>("--plain") { Description = "A line a trial, in place of a table that follows." };

        var run = new Command("run", "Benches the boards of a rig until all is known as closely as wanted.")
        {
            rig,
            journal,
            study,
            goOn,
            plain,
        };
        run.SetAction(
            (parsed, stop) =>
                BenchAsync(
                    parsed.GetValue(rig)!,
                    parsed.GetValue(journal)!,
                    parsed.GetValue(study)!,
                    new Manner(parsed.GetValue(goOn), parsed.GetValue(plain)),
                    stop
                )
        );

        var demo = new Command("demo", "Benches three simulated boards on pseudo-terminals (Linux).") { folder, plain };
        demo.SetAction(
            async (parsed, stop) =>
            {
                var where = parsed.GetValue(folder)!;
                var file = DemoFiles(where);
                using var boards = BoardProcesses.Start(System.IO.Path.Combine(where, "ports"));
                return await BenchAsync(
                        file,
                        System.IO.Path.Combine(where, "bench.jsonl"),
                        System.IO.Path.Combine(where, "study.json"),
                        new Manner(GoesOn: true, parsed.GetValue(plain)),
                        stop
                    )
                    .ConfigureAwait(false);
            }
        );

        var builds = new Command("builds", "Benches two builds of a small C program on this computer.")
        {
            folder,
            plain,
        };
        builds.SetAction(
            (parsed, stop) =>
            {
                var where = parsed.GetValue(folder)!;
                return BenchAsync(
                    TwoBuilds.Prepare(where),
                    System.IO.Path.Combine(where, "bench.jsonl"),
                    System.IO.Path.Combine(where, "study.json"),
                    new Manner(GoesOn: true, parsed.GetValue(plain)),
                    stop
                );
            }
        );

        return new RootCommand("Benches boards over serial lines, keeps every trial, and ends with a study.")
        {
            run,
            demo,
            builds,
            BoardCommand(),
        };
    }

    private static Command BoardCommand()
    {
        var port = new Option<string>("--port") { Description = "Where the line is to be found.", Required = true };
        var mean = new Option<double>("--mean") { Description = "Mean run time in microseconds.", Required = true };
        var spread = new Option<double>("--spread") { Description = "Scatter, as a share of the mean." };
        var reset = new Option<int>("--reset-every") { Description = "Runs between resets; 0 for none." };
        var unplug = new Option<int>("--unplug-every") { Description = "Runs between unpluggings; 0 for none." };
        var seed = new Option<ulong>("--seed") { Description = "What run times are drawn from." };
        var board = new Command("board", "Is a simulated board, until its standard input is closed.")
        {
            port,
            mean,
            spread,
            reset,
            unplug,
            seed,
        };
        board.SetAction(parsed =>
        {
            EndWithStandardInput();
            new SimulatedBoard(
                parsed.GetValue(port)!,
                parsed.GetValue(mean),
                parsed.GetValue(spread),
                parsed.GetValue(reset),
                parsed.GetValue(unplug),
                parsed.GetValue(seed)
            ).Run();
            return ExitCode.Done;
        });
        return board;
    }

    private static async Task<int> BenchAsync(
        string rigFile,
        string journalFile,
        string studyFile,
        Manner manner,
        CancellationToken cancellationToken
    )
    {
        await using var rig = Rig.Of(rigFile);
        using var journal = rig.OpenJournal(journalFile);
        if (manner.Plain || !AnsiConsole.Profile.Capabilities.Interactive)
        {
            await rig.RunAsync(journal, new PlainDisplay(Console.Out), manner.GoesOnAfter, cancellationToken)
                .ConfigureAwait(false);
        }
        else
        {
            await AnsiConsole
                .Live(new Text("starting"))
                .StartAsync(context =>
                    rig.RunAsync(journal, new LiveDisplay(context), manner.GoesOnAfter, cancellationToken)
                )
                .ConfigureAwait(false);
        }

        var study = journal.ToStudy();
        try
        {
            StudyFile.Write(studyFile, study);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new RigException(ExitCode.NoJournal, fault.Message, fault);
        }

        var look = rig.Schedule.Look(study.Trials);
        for (var i = 0; i < look.Decisions.Count; i++)
        {
            Console.Out.WriteLine($"{rig.Schedule.Slots[i]}: {look.Decisions[i]}");
        }

        Console.Out.WriteLine($"Wrote {study.Trials.Count} trials to {studyFile}");
        return ExitCode.Done;
    }

    private static string DemoFiles(string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var file in Directory.EnumerateFiles(System.IO.Path.Combine(AppContext.BaseDirectory, "demo")))
        {
            File.Copy(file, System.IO.Path.Combine(folder, System.IO.Path.GetFileName(file)), overwrite: true);
        }

        return System.IO.Path.Combine(folder, "rig.json");
    }

    private static void EndWithStandardInput() =>
        new Thread(() =>
        {
            Console.In.ReadToEnd();
            Environment.Exit(ExitCode.Done);
        })
        {
            IsBackground = true,
        }.Start();

    private static Option<string> Path(string name, string description, string unless) =>
        new(name) { Description = description, DefaultValueFactory = _ => unless };

    private static int Say(string message, int exitCode)
    {
        Console.Error.WriteLine($"bench-rig: {string.Concat(message.Select(c => char.IsControl(c) ? ' ' : c))}");
        return exitCode;
    }

    private sealed record Manner(bool GoesOn, bool Plain)
    {
        public bool GoesOnAfter(Finding finding) =>
            GoesOn
            || (
                !Plain
                && AnsiConsole.Profile.Capabilities.Interactive
                && AnsiConsole.Confirm(Markup.Escape($"{finding.Subject}: {finding.Evidence} {finding.Advice} Go on?"))
            );
    }
}
