using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply.Cells;

/// <summary>What the board does over and over: one task, then idle until the period is over.</summary>
/// <remarks>The task's charge is gross: all that flows while it lasts. Immutable; quantities are held in SI units; equal
/// when all properties are equal. Safe to use from many threads.</remarks>
public sealed record DutyCycle
{
    /// <summary>Makes a cycle of figures that are known exactly, until their uncertainties are set.</summary>
    /// <param name="period">From task to task, above zero; taken as exact.</param>
    /// <param name="taskTime">How long a task lasts, above zero and at most the period; taken as exact.</param>
    /// <param name="taskCharge">What flows into the board during a task, gross, above zero.</param>
    /// <param name="idleCurrent">What flows into the board between tasks, not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range.</exception>
    /// <exception cref="ArgumentException">The task lasts longer than the period.</exception>
    public DutyCycle(Duration period, Duration taskTime, ElectricCharge taskCharge, ElectricCurrent idleCurrent)
    {
        Period = Require.Positive(period, "Period", nameof(period));
        TaskTime = Require.Positive(taskTime, "Task's time", nameof(taskTime));
        TaskCharge = Require.Positive(taskCharge, "Task's charge", nameof(taskCharge));
        IdleCurrent = Require.NotNegative(idleCurrent, "Idle current", nameof(idleCurrent));
        if (Si.Seconds(TaskTime) > Si.Seconds(Period))
        {
            throw new ArgumentException(
                $"Task's time must be at most the period of {QuantityText.Format(Period)}; was {QuantityText.Format(TaskTime)}.",
                nameof(taskTime)
            );
        }
    }

    /// <summary>From task to task.</summary>
    public Duration Period { get; }

    /// <summary>How long a task lasts.</summary>
    public Duration TaskTime { get; }

    /// <summary>What flows into the board during a task, gross.</summary>
    public ElectricCharge TaskCharge { get; }

    /// <summary>What flows into the board between tasks.</summary>
    public ElectricCurrent IdleCurrent { get; }

    /// <summary>The standard uncertainty of the task's charge; zero unless given.</summary>
    public ElectricCharge TaskChargeUncertainty
    {
        get;
        init =>
            field =
                Si.Coulombs(value) == 0
                    ? Si.Charge(0)
                    : Require.Positive(value, "Uncertainty of the task's charge", nameof(TaskChargeUncertainty));
    } = Si.Charge(0);

    /// <summary>The degrees of freedom of that uncertainty, at least 1; positive infinity unless given.</summary>
    public double TaskChargeFreedom
    {
        get;
        init =>
            field =
                value >= 1
                    ? value
                    : throw new ArgumentOutOfRangeException(
                        nameof(TaskChargeFreedom),
                        value,
                        FormattableString.Invariant($"Degrees of freedom must be at least 1; was {value}.")
                    );
    } = double.PositiveInfinity;

    /// <summary>The limits of the idle current, ± as a share of it.</summary>
    public Ratio IdleCurrentTolerance
    {
        get;
        init => field = Require.Share(value, "Idle current tolerance", nameof(IdleCurrentTolerance));
    }

    /// <summary>A cycle with a measured charge, such as <see cref="Traces.TaskCharges.MeanGross"/> gives; where that has
    /// no interval it counts as exact.</summary>
    /// <param name="period">From task to task, above zero.</param>
    /// <param name="taskTime">How long a task lasts, above zero and at most the period.</param>
    /// <param name="taskCharge">What flows into the board during a task, gross, above zero.</param>
    /// <param name="idleCurrent">What flows into the board between tasks, not negative.</param>
    /// <exception cref="ArgumentException">As in the constructor.</exception>
    public static DutyCycle Of(
        Duration period,
        Duration taskTime,
        Measured<ElectricCharge> taskCharge,
        ElectricCurrent idleCurrent
    )
    {
        ArgumentNullException.ThrowIfNull(taskCharge);
        return new DutyCycle(period, taskTime, taskCharge.Value, idleCurrent)
        {
            TaskChargeUncertainty = taskCharge.StandardUncertainty ?? Si.Charge(0),
            TaskChargeFreedom = taskCharge.DegreesOfFreedom ?? double.PositiveInfinity,
        };
    }
}
