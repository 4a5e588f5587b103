using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using McuBench.Core.Boards;
using McuBench.Core.Capture;
using McuBench.Core.Studies;
using McuBench.Core.Trials;
using UnitsNet;

namespace BenchRig;

/// <summary>A bench without hardware: two builds of one small C program on this computer, timed as if it were a
/// board.</summary>
public static class TwoBuilds
{
    private static readonly (string Name, string Option)[] Builds =
    [
        ("plain build", "-O0"),
        ("optimised build", "-O2"),
    ];

    /// <summary>Compiles both and writes the rig's files to a folder.</summary>
    /// <returns>The rig's file.</returns>
    /// <exception cref="RigException">There is no C compiler called cc, or it fails.</exception>
    public static string Prepare(string folder)
    {
        Directory.CreateDirectory(folder);
        var source = Path.Combine(AppContext.BaseDirectory, "builds", "echo.c");
        foreach (var (name, option) in Builds)
        {
            Compile(option, source, Path.Combine(folder, FileOf(name)));
        }

        var computer = new Board("this computer", [new ExecutionCore("core")])
        {
            Description =
                "Whatever core the system chose; its clock is what the system reported at the start, and may vary.",
        };
        var clock = Clock();
        var workload = new Workload("echo spectrum", 40) { ItemName = "round" };
        var timer = new TrialTimer(
            "system clock, process start to end",
            Duration.FromMicroseconds(1),
            TimerReading.TickDifferenceRandomStart
        )
        {
            Place = TimerPlace.OnBoard,
        };
        Setup[] setups =
        [
            .. Builds.Select(build => new Setup(build.Name, computer, computer.Cores[0], new Clock(clock))
            {
                Toolchain = new Toolchain("cc") { Settings = [build.Option] },
            }),
        ];
        StudyFile.Write(
            Path.Combine(folder, "frame.json"),
            new Study("Two builds of one program", [computer], setups, [workload], [timer], [], [], [])
        );
        var rig = new RigFile
        {
            Study = "frame.json",
            HalfWidth = "1 %",
            MostTrials = 100,
            Seed = 1,
            Wires =
            [
                .. Builds.Select(build => new WireFile
                {
                    Setup = build.Name,
                    Workload = workload.Name,
                    Timer = timer.Name,
                    Command = [Path.Combine(Path.GetFullPath(folder), FileOf(build.Name))],
                }),
            ],
        };
        var path = Path.Combine(folder, "rig.json");
        File.WriteAllBytes(path, JsonSerializer.SerializeToUtf8Bytes(rig, RigJson.Default.RigFile));
        return path;
    }

    private static string FileOf(string name) => name.Replace(' ', '-');

    private static void Compile(string option, string source, string target)
    {
        try
        {
            using var compiler = Process.Start("cc", [option, "-o", target, source, "-lm"]);
            compiler.WaitForExit();
            if (compiler.ExitCode != 0)
            {
                throw new RigException(ExitCode.BadInput, $"cc {option} failed with code {compiler.ExitCode}.");
            }
        }
        catch (System.ComponentModel.Win32Exception missing)
        {
            throw new RigException(
                ExitCode.BadInput,
                "There is no C compiler called cc; install one (gcc in Debian) and try again.",
                missing
            );
        }
    }

    private static Frequency Clock()
    {
        const string cpuInfo = "/proc/cpuinfo";
        var line = File.Exists(cpuInfo)
            ? File.ReadLines(cpuInfo).FirstOrDefault(text => text.StartsWith("cpu MHz", StringComparison.Ordinal))
            : null;
        return
            line?.Split(':') is [_, var number]
            && double.TryParse(number, CultureInfo.InvariantCulture, out var megahertz)
            && megahertz > 0
            ? Frequency.FromMegahertz(megahertz)
            : Frequency.FromGigahertz(1);
    }
}
