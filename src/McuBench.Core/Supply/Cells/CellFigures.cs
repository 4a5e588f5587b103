using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Stats.Uncertainty;

namespace McuBench.Core.Supply.Cells;

/// <summary>The model of a cell's life over its inputs, and the budgets that come of it.</summary>
internal sealed class CellFigures
{
    private const double SecondsInAYear = 365.25 * 86400;
    private const double YearsOfDoubt = 10;
    private const string Method = "cell's life under a duty cycle, first order";

    private readonly Cell cell;
    private readonly DutyCycle cycle;
    private readonly Regulator? regulator;
    private readonly InputQuantity[] uncertain;
    private readonly double[] values;

    // Which of the values each uncertain input is.
    private readonly int[] places;

    public CellFigures(Cell cell, DutyCycle cycle, Regulator? regulator)
    {
        this.cell = cell;
        this.cycle = cycle;
        this.regulator = regulator;
        RefuseWhatCannotWork();
        var inputs = Inputs().ToArray();
        values = [.. inputs.Select(input => input.Value)];
        places = [.. Enumerable.Range(0, inputs.Length).Where(i => inputs[i].Uncertainty > 0)];
        uncertain =
        [
            .. places.Select(i =>
                InputQuantity.FromStandardUncertainty(
                    inputs[i].Name,
                    inputs[i].Value,
                    inputs[i].Uncertainty,
                    inputs[i].DegreesOfFreedom
                )
            ),
        ];
    }

    private double TaskAmperes => Si.Coulombs(cycle.TaskCharge) / Si.Seconds(cycle.TaskTime);

    public CellLife Life(double confidence)
    {
        var measure = new Measure(confidence, 1, Method);
        var runTime = Value(RunTime);
        var current = Value(MeanCurrent);
        var share = values[(int)Place.UsableShare] * values[(int)Place.Derating];
        var lost = 1 - current.Value * runTime.Value / (values[(int)Place.Capacity] * share);
        return new CellLife(Cautions(runTime.Value, lost))
        {
            RunTime = measure.Of(runTime, seconds => Si.Duration(seconds), Ends.Positive),
            Tasks = measure.Of(runTime.Times(1 / Si.Seconds(cycle.Period)), tasks => tasks, Ends.Positive),
            MeanCurrent = measure.Of(current, amperes => Si.Current(amperes), Ends.Positive),
            // Rounding leaves dust on either side of 0 where nothing is lost.
            LostToSelfDischarge = Si.Ratio(values[(int)Place.SelfDischarge] == 0 ? 0 : Math.Max(0, lost)),
        };
    }

    private IEnumerable<(string Name, double Value, double Uncertainty, double DegreesOfFreedom)> Inputs()
    {
        yield return Limited("capacity", Si.Coulombs(cell.Capacity), Si.Fraction(cell.CapacityTolerance));
        yield return Limited("usable share", Si.Fraction(cell.UsableShare), Si.Fraction(cell.UsableShareTolerance));
        yield return Limited(
            "temperature derating",
            Si.Fraction(cell.TemperatureDerating),
            Si.Fraction(cell.TemperatureDeratingTolerance)
        );
        yield return Limited(
            "self-discharge",
            Si.Fraction(cell.SelfDischargePerYear),
            Si.Fraction(cell.SelfDischargeTolerance)
        );
        yield return (
            "charge of a task",
            Si.Coulombs(cycle.TaskCharge),
            Si.Coulombs(cycle.TaskChargeUncertainty),
            cycle.TaskChargeFreedom
        );
        yield return Limited("idle current", Si.Amperes(cycle.IdleCurrent), Si.Fraction(cycle.IdleCurrentTolerance));
        yield return Limited(
            "mean voltage of the cell",
            Si.Volts(cell.MeanVoltage),
            Si.Fraction(cell.MeanVoltageTolerance)
        );
        yield return regulator is null
            ? Limited("quiescent current", 0, 0)
            : Limited("quiescent current", Si.Amperes(regulator.Quiescent), Si.Fraction(regulator.QuiescentTolerance));
        yield return Limited("efficiency of the regulator", 1, regulator?.EfficiencyLimit ?? 0);
    }

    private static (string Name, double Value, double Uncertainty, double DegreesOfFreedom) Limited(
        string name,
        double value,
        double limit
    ) => (name, value, RunTimeFigures.OfTolerance(limit * value), double.PositiveInfinity);

    private void RefuseWhatCannotWork()
    {
        if (regulator is { } between && Si.Volts(between.LeastInput) > Si.Volts(cell.Cutoff))
        {
            throw new ArgumentException(
                $"Regulator must hold its output down to the cell's cutoff of {QuantityText.Format(cell.Cutoff)}; needs {QuantityText.Format(between.LeastInput)}: give the cell that cutoff and the share that comes out down to it.",
                nameof(regulator)
            );
        }

        var most = Si.Fraction(cell.SelfDischargePerYear) * (1 + Si.Fraction(cell.SelfDischargeTolerance));
        if (most >= 1)
        {
            throw new ArgumentException(
                $"Self-discharge per year must stay below 100 % up to its limit; was {QuantityText.Format(Si.Ratio(most))} there.",
                nameof(cell)
            );
        }

        regulator?.RefuseUnknown(TaskAmperes, "Current of a task");
        if (Si.Seconds(cycle.TaskTime) < Si.Seconds(cycle.Period))
        {
            regulator?.RefuseUnknown(Si.Amperes(cycle.IdleCurrent), "Idle current");
        }
    }

    private UncertainValue Value(Func<double[], double> model)
    {
        if (uncertain.Length == 0)
        {
            return UncertainValue.Exact(model(values));
        }

        var budget = Propagation.FirstOrder(
            uncertain,
            inputs =>
            {
                var moved = (double[])values.Clone();
                for (var i = 0; i < inputs.Length; i++)
                {
                    moved[places[i]] = inputs[i];
                }

                return model(moved);
            }
        );
        return UncertainValue.Of(
            budget.Value,
            budget.Components.Select(part => new Contribution(
                new Source(
                    $"cell|{part.Input.Name}",
                    part.Input.Name,
                    double.IsFinite(part.Input.DegreesOfFreedom)
                        ? Conclusions.EvaluationType.TypeA
                        : Conclusions.EvaluationType.TypeB,
                    part.Input.DegreesOfFreedom,
                    AveragesDown: false
                ),
                part.Sensitivity * part.Input.StandardUncertainty
            ))
        );
    }

    private double MeanCurrent(double[] inputs)
    {
        var period = Si.Seconds(cycle.Period);
        var task = Si.Seconds(cycle.TaskTime);
        return (
                InputAmperes(inputs[(int)Place.TaskCharge] / task, inputs) * task
                + InputAmperes(inputs[(int)Place.IdleCurrent], inputs) * (period - task)
            ) / period;
    }

    private double InputAmperes(double load, double[] inputs) =>
        regulator is null
            ? load
            : regulator.InputAmperes(
                load,
                inputs[(int)Place.MeanVoltage],
                inputs[(int)Place.Quiescent],
                inputs[(int)Place.Efficiency]
            );

    private double RunTime(double[] inputs)
    {
        var amperes = MeanCurrent(inputs);
        var capacity = inputs[(int)Place.Capacity];
        var usable = capacity * inputs[(int)Place.UsableShare] * inputs[(int)Place.Derating];
        var rate = -LogOnePlus(-inputs[(int)Place.SelfDischarge]) / SecondsInAYear;
        return rate == 0 ? usable / amperes : LogOnePlus(rate * usable / (rate * (capacity - usable) + amperes)) / rate;
    }

    // The runtime's own logarithm of 1 + x rounds the sum first, and is 0 for the loss of a second.
    private static double LogOnePlus(double x) => 2 * Math.Atanh(x / (2 + x));

    private IEnumerable<string> Cautions(double seconds, double lost)
    {
        var peak = InputAmperes(TaskAmperes, values);
        if (cell.GreatestCurrent is { } limit && peak > Si.Amperes(limit))
        {
            yield return $"A task draws {QuantityText.Format(Si.Current(peak))} on average, more than the {QuantityText.Format(limit)} that the cell may give: its capacity does not hold there.";
        }

        if (lost > 0.5)
        {
            yield return "More than half of the charge is lost by itself: the self-discharge decides, not the board.";
        }

        if (seconds > YearsOfDoubt * SecondsInAYear)
        {
            yield return "Beyond ten years a cell ages in ways that no figure here covers.";
        }
    }

    private enum Place
    {
        Capacity,
        UsableShare,
        Derating,
        SelfDischarge,
        TaskCharge,
        IdleCurrent,
        MeanVoltage,
        Quiescent,
        Efficiency,
    }
}
