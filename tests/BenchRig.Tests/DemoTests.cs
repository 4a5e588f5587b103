using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using McuBench.Core.Studies;

namespace BenchRig.Tests;

/// <summary>The rig on simulated boards at pseudo-terminals: one is reset in the middle of its answers, one unplugged.</summary>
public sealed class DemoTests
{
    private const int Kills = 8;

    [Fact]
    public async Task Demo_KilledAtRandomPoints_LosesNoAcknowledgedTrialAndEndsWithAStudy()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals are opened the Linux way.");
        using var rig = new RigProcess();
        var random = new Random(20261125);
        var acknowledged = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            var last = await rig.RunAndKillAsync(
                random.Next(1, 5),
                TimeSpan.FromMilliseconds(random.Next(0, 30)),
                "demo",
                "--plain",
                "--folder",
                "."
            );
            acknowledged = Math.Max(acknowledged, last);

            // One more may be on the disk than was said: killed between the two.
            var kept = Journal.Read(rig.PathOf("bench.jsonl")).Study.Trials;
            Assert.InRange(kept.Count, acknowledged, int.MaxValue);
            Assert.Equal(Enumerable.Range(1, kept.Count), kept.Select(trial => trial.Order!.Value));
        }

        Assert.InRange(acknowledged, Kills, int.MaxValue);
        var (code, output, error) = await rig.RunAsync("demo", "--plain", "--folder", ".");

        Assert.True(code == ExitCode.Done, error);
        Assert.Empty(error);
        var study = StudyFile.Read(rig.PathOf("study.json"));
        Assert.Equal(Journal.Read(rig.PathOf("bench.jsonl")).Study, study);
        Assert.Equal(Enumerable.Range(1, study.Trials.Count), study.Trials.Select(trial => trial.Order!.Value));
        Assert.Equal(3, study.Series().Count);
        Assert.All(study.Series(), series => Assert.True(series.Trials.Count >= 14));
        Assert.EndsWith($"Wrote {study.Trials.Count} trials to ./study.json\n", output, StringComparison.Ordinal);

        // The boards' made-up means differ by more than a tenth of a per cent, and order is by blocks: a verdict stands.
        var comparison = StudyConclusions
            .Of(study, cancellationToken: TestContext.Current.CancellationToken)
            .Comparisons.Single(pair =>
                pair.First.Setup.Name == "Marl 200 MHz" && pair.Second.Setup.Name == "Schist B 160 MHz"
            );
        Assert.Equal(Verdict.Different, comparison.RunTime.Verdict);
        Assert.Equal(412_130.0 / 338_020, comparison.RunTime.Ratio.Value, 2);
    }
}
