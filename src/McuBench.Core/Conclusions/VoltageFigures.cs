using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Stats.Descriptive;

namespace McuBench.Core.Conclusions;

/// <summary>The voltage that power and energy rest on, in volts, and what has to be said of it.</summary>
internal sealed record VoltageFigures(UncertainValue? Volts, IReadOnlyList<string> Notes)
{
    /// <summary>The voltage read with the current, or else the supply's nominal one where the meter sat at the board's
    /// input.</summary>
    /// <param name="setup">What was measured.</param>
    /// <param name="readings">At least one, all at one measuring point.</param>
    public static VoltageFigures Of(Setup setup, IReadOnlyList<SupplyReading> readings)
    {
        double[] read =
        [
            .. readings.Select(r => r.BoardVoltage).OfType<UnitsNet.ElectricPotential>().Select(v => Si.Volts(v)),
        ];
        if (read.Length > 0)
        {
            return OfReadings(setup, read, readings.Count);
        }

        if (setup.Supply is not { } supply)
        {
            return new VoltageFigures(
                null,
                [
                    "No voltage is known: neither read with the current nor stated for the supply; power and energy are left out.",
                ]
            );
        }

        if (readings[0].Point == MeasuringPoint.AfterRegulator)
        {
            return new VoltageFigures(
                null,
                ["Current was read behind the regulator and the voltage there wasn't; power and energy are left out."]
            );
        }

        return OfNominal(setup, supply, readings);
    }

    private static VoltageFigures OfReadings(Setup setup, double[] read, int readings)
    {
        var mean = Location.Mean(read);
        var notes = new List<string>
        {
            $"Energy rests on {Said.Count(read.Length, "voltage reading")}; the accuracy of what read the voltage isn't stated and is not in the interval.",
        };
        if (read.Length < readings)
        {
            notes.Add($"The voltage was read with {read.Length} of {Said.Count(readings, "current reading")}.");
        }

        var scatter = read.Length > 1 ? Scale.Variance(read) / read.Length : 0;
        var source = new Source(
            $"voltage|{setup.Name}",
            $"scatter of {Said.Count(read.Length, "voltage reading")}, {setup.Name}",
            EvaluationType.TypeA,
            Math.Max(1, read.Length - 1),
            AveragesDown: true
        )
        {
            Kind = BudgetKind.Scatter,
        };
        return new VoltageFigures(UncertainValue.Of(mean, new Contribution(source, Math.Sqrt(scatter))), notes);
    }

    private static VoltageFigures OfNominal(Setup setup, BoardSupply supply, IReadOnlyList<SupplyReading> readings)
    {
        var nominal = UncertainValue.Exact(Si.Volts(supply.Voltage));
        var notes = new List<string>();
        if (supply.Tolerance is { } tolerance)
        {
            var source = new Source(
                $"supply|{setup.Name}",
                $"tolerance of the supply voltage, {setup.Name}",
                EvaluationType.TypeB,
                double.PositiveInfinity,
                AveragesDown: false
            )
            {
                Kind = BudgetKind.SupplyVoltage,
                IsLimit = true,
            };
            nominal = nominal.WithRelative(source, RunTimeFigures.OfTolerance(Si.Fraction(tolerance)));
            notes.Add(
                $"Energy rests on the supply's nominal voltage of {QuantityText.Format(supply.Voltage)} within {Said.Percent(Si.Fraction(tolerance))}; the voltage wasn't read."
            );
        }
        else
        {
            notes.Add(
                $"Energy rests on the supply's nominal voltage of {QuantityText.Format(supply.Voltage)}; its tolerance is unknown and not in the interval."
            );
        }

        var burden = readings.Max(r =>
            r.MeterRange.BurdenAtFullScale is { } atFullScale
                ? Si.Volts(atFullScale) * Si.Amperes(r.Current) / Si.Amperes(r.MeterRange.FullScale)
                : 0
        );
        if (burden > 0)
        {
            notes.Add($"The meter's own loss of up to {Said.Volts(burden)} is not subtracted from that voltage.");
        }

        return new VoltageFigures(nominal, notes);
    }
}
