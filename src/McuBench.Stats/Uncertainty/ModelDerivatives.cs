using System.Globalization;

namespace McuBench.Stats.Uncertainty;

/// <summary>Derivatives of a model at the estimates of its inputs, up to those that the second order needs.</summary>
internal sealed class ModelDerivatives
{
    // The step is the uncertainty, which is the reach that matters; for a smaller one this part of the value, below
    // which differences drown in rounding.
    private const double SmallestRelativeStep = 1.0 / 1024;

    private readonly MeasurementModel _model;
    private readonly InputSet _set;
    private readonly double[] _values;
    private readonly double[] _steps;

    internal ModelDerivatives(MeasurementModel model, InputSet set)
    {
        _model = model;
        _set = set;
        _values = [.. set.Inputs.Select(input => input.Value)];
        _steps =
        [
            .. set.Inputs.Select(input =>
                Math.Max(input.StandardUncertainty, Math.Abs(input.Value) * SmallestRelativeStep)
            ),
        ];
        ValueAtEstimates = model(_values);
        if (!double.IsFinite(ValueAtEstimates))
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Model must give a finite number at the estimates of its inputs; gave {ValueAtEstimates}."
                ),
                nameof(model)
            );
        }
    }

    internal double ValueAtEstimates { get; }

    /// <summary>∂f/∂xᵢ.</summary>
    internal DerivativeEstimate First(int i) => Limit(i, t => (Moved(i, t) - Moved(i, -t)) / (2 * t * _steps[i]));

    /// <summary>∂²f/∂xᵢ∂xⱼ.</summary>
    internal DerivativeEstimate Second(int i, int j) =>
        i == j
            ? Limit(
                i,
                t => ((Moved(i, t) - ValueAtEstimates) + (Moved(i, -t) - ValueAtEstimates)) / Square(t * _steps[i])
            )
            : Limit(
                i,
                t =>
                    ((Moved(i, t, j, t) - Moved(i, t, j, -t)) - (Moved(i, -t, j, t) - Moved(i, -t, j, -t)))
                    / (4 * t * _steps[i] * t * _steps[j])
            );

    /// <summary>∂³f/∂xᵢ∂xⱼ².</summary>
    internal DerivativeEstimate Third(int i, int j) =>
        i == j
            ? Limit(
                i,
                t =>
                    ((Moved(i, 2 * t) - Moved(i, -2 * t)) - 2 * (Moved(i, t) - Moved(i, -t)))
                    / (2 * t * _steps[i] * Square(t * _steps[i]))
            )
            : Limit(i, t => (Bend(i, t, j, t) - Bend(i, -t, j, t)) / (2 * t * _steps[i] * Square(t * _steps[j])));

    private static double Square(double x) => x * x;

    /// <summary>The second difference along j with i moved aside.</summary>
    private double Bend(int i, double a, int j, double b)
    {
        double middle = Moved(i, a);
        return (Moved(i, a, j, b) - middle) + (Moved(i, a, j, -b) - middle);
    }

    private double Moved(int i, double a)
    {
        double kept = _values[i];
        _values[i] = kept + (a * _steps[i]);
        double result = _model(_values);
        _values[i] = kept;
        return result;
    }

    private double Moved(int i, double a, int j, double b)
    {
        double kept = _values[j];
        _values[j] = kept + (b * _steps[j]);
        double result = Moved(i, a);
        _values[j] = kept;
        return result;
    }

    private DerivativeEstimate Limit(int i, Func<double, double> quotient) =>
        RiddersLimit.Of(quotient)
        ?? throw new ArgumentException(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Model must be finite on both sides of the estimate of '{_set.Inputs[i].Name}'; was not at any distance from {_values[i]}: give the sensitivities, or use Monte Carlo."
            ),
            "model"
        );
}
