using McuBench.Core.Capture;
using McuBench.Core.Studies;

namespace BenchRig.Tests;

/// <summary>The command <c>run</c>, on commands of this computer and on ports that misbehave.</summary>
public sealed class RunTests
{
    private const string Frame = """
        {
          "format": "McuBench study", "version": 1, "title": "Commands", "invented": true,
          "boards": [{ "name": "here", "cores": [{ "name": "core" }] }],
          "setups": [{ "name": "echo", "board": "here", "clock": { "frequency": "1 GHz" } }],
          "workloads": [{ "name": "say", "workItemsPerRun": 1, "outputChecksum": "42" }],
          "timers": [{ "name": "clock", "resolution": "1 us", "reading": "tickDifferenceRandomStart" }]
        }
        """;

    [Fact]
    public async Task Run_Command_IsTimedAndItsOutputKept()
    {
        using var rig = Rig(
            """{ "setup": "echo", "workload": "say", "timer": "clock", "command": ["sh", "-c", "echo 42"] }"""
        );

        var (code, output, error) = await rig.RunAsync("run", "rig.json", "--plain", "--go-on");

        Assert.True(code == ExitCode.Done, error);
        var study = StudyFile.Read(rig.PathOf("study.json"));
        Assert.All(study.Trials, trial => Assert.Equal("42", trial.OutputChecksum));
        Assert.InRange(study.Trials.Count, 14, 30);
        Assert.Contains($"Wrote {study.Trials.Count} trials to study.json", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_CommandThatFails_EndsWithThreeAndItsWords()
    {
        using var rig = Rig(
            """{ "setup": "echo", "workload": "say", "timer": "clock", "command": ["sh", "-c", "echo no >&2; exit 7"] }"""
        );

        var (code, _, error) = await rig.RunAsync("run", "rig.json", "--plain");

        Assert.Equal(ExitCode.NoBoard, code);
        Assert.Equal("bench-rig: echo, say: sh ended with code 7: no\n", error);
        Assert.False(File.Exists(rig.PathOf("study.json")));
    }

    [Theory]
    [InlineData(
        """{ "setup": "elsewhere", "workload": "say", "timer": "clock", "command": ["true"] }""",
        "bench-rig: rig.json: The study has no setup \"elsewhere\"; it has echo.\n"
    )]
    [InlineData(
        """{ "setup": "echo", "workload": "say", "timer": "clock" }""",
        "bench-rig: rig.json: The wire to echo, say must have either a port and a pattern, or a command with its arguments.\n"
    )]
    [InlineData(
        """{ "setup": "echo", "workload": "say", "timer": "clock", "port": "p", "pattern": "(?<time>" }""",
        "bench-rig: rig.json: Line's expression must be a regular expression; \"(?<time>\" is not: "
    )]
    [InlineData(
        """{ "setup": "echo", "workload": "say", "timer": "clock", "command": ["true"], "bawd": 1 }""",
        "bench-rig: rig.json: The JSON property 'bawd' could not be mapped"
    )]
    public async Task Run_RigThatCantBe_EndsWithTwo(string wire, string message)
    {
        using var rig = Rig(wire);

        var (code, output, error) = await rig.RunAsync("run", "rig.json");

        Assert.Equal(ExitCode.BadInput, code);
        Assert.StartsWith(message, error, StringComparison.Ordinal);
        Assert.Empty(output);
        Assert.False(File.Exists(rig.PathOf("bench.jsonl")));
    }

    [Fact]
    public async Task Run_JournalHeldByAnother_EndsWithFour()
    {
        using var rig = Rig("""{ "setup": "echo", "workload": "say", "timer": "clock", "command": ["true"] }""");
        using var held = Journal.Create(rig.PathOf("bench.jsonl"), StudyFile.Read(rig.PathOf("frame.json")));

        var (code, _, error) = await rig.RunAsync("run", "rig.json");

        Assert.Equal(ExitCode.NoJournal, code);
        Assert.Equal(
            "bench-rig: bench.jsonl is being written by another program. Two can't write one journal: end the other, or use another file.\n",
            error
        );
    }

    [Fact]
    public async Task Run_JournalInNoFolder_EndsWithFour()
    {
        using var rig = Rig("""{ "setup": "echo", "workload": "say", "timer": "clock", "command": ["true"] }""");

        var (code, _, error) = await rig.RunAsync("run", "rig.json", "--journal", "none/bench.jsonl");

        Assert.Equal(ExitCode.NoJournal, code);
        Assert.StartsWith("bench-rig: none/bench.jsonl: there is no folder ", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_JournalOfAnotherStudy_EndsWithTwoAndLeavesItAlone()
    {
        using var rig = Rig("""{ "setup": "echo", "workload": "say", "timer": "clock", "command": ["true"] }""");
        Journal
            .Create(
                rig.PathOf("bench.jsonl"),
                StudyJson.Read(Frame.Replace("Commands", "Others", StringComparison.Ordinal), "other")
            )
            .Dispose();
        var before = File.ReadAllBytes(rig.PathOf("bench.jsonl"));

        var (code, _, error) = await rig.RunAsync("run", "rig.json");

        Assert.Equal(ExitCode.BadInput, code);
        Assert.Equal(
            "bench-rig: bench.jsonl was begun for another study, or the study was changed since; give another journal.\n",
            error
        );
        Assert.Equal(before, File.ReadAllBytes(rig.PathOf("bench.jsonl")));
    }

    [Fact]
    public async Task Run_PortThatIsNotThere_EndsWithThree()
    {
        using var rig = Rig(
            """{ "setup": "echo", "workload": "say", "timer": "clock", "port": "nowhere", "pattern": "(?<time>[0-9]+) us", "patienceSeconds": 0.4 }"""
        );

        var (code, _, error) = await rig.RunAsync("run", "rig.json", "--plain");

        Assert.Equal(ExitCode.NoBoard, code);
        Assert.StartsWith("bench-rig: echo, say: no result within 0.4 s: its port ", error, StringComparison.Ordinal);
        Assert.Contains(" is gone: ", error, StringComparison.Ordinal);
        Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public async Task Run_PortFullOfNoise_FindsTheAnswersInIt()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals are opened the Linux way.");
        using var rig = Rig(
            """{ "setup": "echo", "workload": "say", "timer": "clock", "port": "noisy", "pattern": "(?<time>[0-9]+) (?<unit>us)" }"""
        );
        using var line = new PseudoTerminal(rig.PathOf("noisy"));
        var board = new Thread(() => AnswerInNoise(line)) { IsBackground = true };
        board.Start();

        var (code, _, error) = await rig.RunAsync("run", "rig.json", "--plain", "--go-on");

        Assert.True(code == ExitCode.Done, error);
        var study = StudyFile.Read(rig.PathOf("study.json"));
        Assert.All(study.Trials, trial => Assert.Equal(0.001, trial.RunTime.Seconds, 1e-15));
    }

    [Theory]
    [InlineData("bench-rig: Required command was not provided. See --help.\n")]
    [InlineData("bench-rig: Unrecognized command or argument 'dance'. See --help.\n", "dance")]
    public async Task Run_CommandLineThatCantBe_EndsWithTwo(string message, params string[] args)
    {
        using var rig = Rig("{}");

        var (code, _, error) = await rig.RunAsync(args);

        Assert.Equal(ExitCode.BadInput, code);
        Assert.Equal(message, error);
    }

    private static void AnswerInNoise(PseudoTerminal line)
    {
        var noise = new Random(5);
        try
        {
            while (line.Read() is { Length: > 0 })
            {
                line.Write(new string([.. Enumerable.Range(0, 20_000).Select(_ => (char)noise.Next(0, 255))]));
                line.Write("\n1000 us\n");
            }
        }
        catch (IOException)
        {
            // The test is over and has closed the line.
        }
    }

    private static RigProcess Rig(string wire)
    {
        var rig = new RigProcess();
        rig.Write("frame.json", Frame);
        rig.Write(
            "rig.json",
            $$"""{ "study": "frame.json", "halfWidth": "60 %", "mostTrials": 30, "seed": 1, "wires": [{{wire}}] }"""
        );
        return rig;
    }
}
