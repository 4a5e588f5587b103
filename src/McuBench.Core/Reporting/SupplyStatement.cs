using McuBench.Core.Boards;
using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>Says in sentences what a task costs: gross, the whole board as measured, and net of a baseline.</summary>
public static class SupplyStatement
{
    /// <summary>Says the charge per task of the whole board, and the energy where a voltage is known.</summary>
    /// <param name="summary">A summary of a setup whose supply was read.</param>
    /// <exception cref="ArgumentException">Its supply was not read.</exception>
    public static string Gross(SetupSummary summary)
    {
        var supply = SupplyOf(summary);
        var energy = supply.EnergyPerTask is { } joules ? $", and {Phrase.ValueAndInterval(joules)} of energy" : "";
        return $"{summary.Setup.Name} takes {Phrase.ValueAndInterval(supply.ChargePerTask)} of charge per task for the {summary.Workload.Name}{energy}: gross, the whole board{Included(summary)}; {Said.Count(summary.RunTime.Trials, "trial")}, {Said.Count(supply.Readings.Count, "reading")} of current.";
    }

    /// <summary>Says the charge per task less a baseline, beside the gross figure and what share the baseline has in it.</summary>
    /// <param name="summary">The summary of the setup.</param>
    /// <param name="net">One of its net figures.</param>
    /// <exception cref="ArgumentException">Its supply was not read, or the net figures are another's.</exception>
    public static string Net(SetupSummary summary, NetSupply net)
    {
        var supply = SupplyOf(summary);
        ArgumentNullException.ThrowIfNull(net);
        return supply.Net.Contains(net)
            ? $"Less {net.Baseline}, which has {Phrase.Value(net.BaselineShare)} ({Phrase.IntervalOf(net.BaselineShare)}) of it, the charge per task of {summary.Setup.Name} for the {summary.Workload.Name} is {Phrase.ValueAndInterval(net.ChargePerTask)}, net; gross it is {Phrase.Value(supply.ChargePerTask)}."
            : throw new ArgumentException(
                $"Net figures must be of the summary; {summary.Setup.Name} has none less \"{net.Baseline}\" that are these.",
                nameof(net)
            );
    }

    private static SupplySummary SupplyOf(SetupSummary summary)
    {
        ArgumentNullException.ThrowIfNull(summary);
        return summary.Supply
            ?? throw new ArgumentException(
                $"The supply of a setup must have been read to say what a task costs; that of {summary.Setup.Name} was not.",
                nameof(summary)
            );
    }

    private static string Included(SetupSummary summary)
    {
        var included = summary
            .Setup.Attachments.Where(attachment => attachment.State != AttachmentState.Off)
            .Select(attachment => attachment.Name)
            .ToArray();
        return included.Length == 0 ? "" : $", {Said.List(included)} included";
    }
}
