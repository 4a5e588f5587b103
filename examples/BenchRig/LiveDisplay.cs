using System.Diagnostics;
using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using Spectre.Console;

namespace BenchRig;

/// <summary>A table that follows the run, for a terminal.</summary>
public sealed class LiveDisplay(LiveDisplayContext context) : IRigDisplay
{
    private readonly long began = Stopwatch.GetTimestamp();
    private BenchSchedule? shown;
    private int taken;

    /// <inheritdoc/>
    public void Begin(BenchSchedule schedule, BenchLook look, JournalCut? cut)
    {
        shown = schedule;
        Show(look, cut is null ? "starting" : $"starting; {cut}");
    }

    /// <inheritdoc/>
    public void Acknowledged(Trial trial, BenchLook look)
    {
        ArgumentNullException.ThrowIfNull(trial);
        ArgumentNullException.ThrowIfNull(look);
        taken++;
        var each = Stopwatch.GetElapsedTime(began) / taken;
        var left = each * look.ExpectedTrials;
        Show(
            look,
            $"trial {trial.Order}: {trial.Setup.Name} {QuantityText.Format(trial.RunTime)}; about {look.ExpectedTrials} to come, {left:h\\:mm\\:ss}"
        );
    }

    private void Show(BenchLook look, string caption)
    {
        var table = new Table().AddColumns("setup", "trials", "interval", "wanted", "");
        table.Caption = new TableTitle(Markup.Escape(caption));
        for (var i = 0; i < look.Decisions.Count; i++)
        {
            var decision = look.Decisions[i];
            table.AddRow(
                Markup.Escape(shown!.Slots[i].ToString()),
                $"{decision.Trials} of about {decision.ExpectedTrials}",
                decision.HalfWidth is { } half ? $"±{half.Percent:G3} %" : "none yet",
                $"±{decision.Wanted.Percent:G3} %",
                Word(decision.Outlook)
            );
        }

        context.UpdateTarget(table);
    }

    private static string Word(StopOutlook outlook) =>
        outlook switch
        {
            StopOutlook.GoOn => string.Empty,
            StopOutlook.Confirm => "confirming",
            StopOutlook.Enough => "enough",
            StopOutlook.AtMaximum => "at the maximum",
            _ => "out of reach",
        };
}
