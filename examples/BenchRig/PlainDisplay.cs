using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;

namespace BenchRig;

/// <summary>A line a trial, for logs.</summary>
public sealed class PlainDisplay(TextWriter output) : IRigDisplay
{
    /// <inheritdoc/>
    public void Begin(BenchSchedule schedule, BenchLook look, JournalCut? cut)
    {
        ArgumentNullException.ThrowIfNull(look);
        if (cut is not null)
        {
            output.WriteLine($"journal: {cut}");
        }

        var taken = look.Decisions.Sum(decision => decision.Trials);
        output.WriteLine($"begin: {taken} trials in the journal, about {look.ExpectedTrials} to come");
        output.Flush();
    }

    /// <inheritdoc/>
    public void Acknowledged(Trial trial, BenchLook look)
    {
        ArgumentNullException.ThrowIfNull(trial);
        ArgumentNullException.ThrowIfNull(look);
        output.WriteLine(
            $"acknowledged {trial.Order}: {trial.Setup.Name}, {trial.Workload.Name}: {QuantityText.Format(trial.RunTime)}; about {look.ExpectedTrials} to come"
        );
        output.Flush();
    }
}
