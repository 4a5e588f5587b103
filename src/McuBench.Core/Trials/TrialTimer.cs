using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Trials;

/// <summary>What timed the trials: its resolution, how it reads, how far its oscillator may be off and where it sits.</summary>
/// <remarks>
/// A coarse timer is not a precise one: a figure shown to 0.1 s stands for an interval, and repeating it does not help
/// when every repeat shows the same. Everything that turns readings into results takes the timer along.
/// Immutable; quantities are held in SI units. Safe to use from many threads.
/// </remarks>
public sealed record TrialTimer
{
    /// <summary>Makes a timer.</summary>
    /// <param name="name">Its name, distinct within a study.</param>
    /// <param name="resolution">The smallest step it shows, above zero.</param>
    /// <param name="reading">How it reads.</param>
    /// <exception cref="ArgumentException">The name is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The resolution is not above zero, or the reading is not defined.</exception>
    public TrialTimer(string name, Duration resolution, TimerReading reading)
    {
        Name = name;
        Resolution = resolution;
        Reading = reading;
    }

    /// <summary>Its name, distinct within a study.</summary>
    public string Name
    {
        get;
        init => field = Require.Name(value, "Timer's name", nameof(Name));
    }

    /// <summary>The smallest step it shows, above zero, in seconds.</summary>
    public Duration Resolution
    {
        get;
        init => field = Require.Positive(value, "Timer's resolution", nameof(Resolution));
    }

    /// <summary>How it reads.</summary>
    public TimerReading Reading
    {
        get;
        init => field = Require.Defined(value, "Timer's reading", nameof(Reading));
    }

    /// <summary>The most by which its oscillator may be off, as a share; absent when unknown.</summary>
    public Ratio? Tolerance
    {
        get;
        init => field = value is { } share ? Require.Share(share, "Timer's tolerance", nameof(Tolerance)) : null;
    }

    /// <summary>Where its oscillator sits.</summary>
    public TimerPlace Place
    {
        get;
        init => field = Require.Defined(value, "Timer's place", nameof(Place));
    } = TimerPlace.OnBoard;

    /// <summary>Whether its time is derived from the very clock that is changed between setups; absent when unknown.
    /// Where it is, run times at different clocks can't be told apart from the timer's own change of pace.</summary>
    public bool? DerivedFromChangedClock { get; init; }

    /// <summary>How far the true run time may lie below and above a single reading because of resolution and reading,
    /// tolerance apart: from <c>reading − Below</c> to <c>reading + Above</c>.</summary>
    public (Duration Below, Duration Above) Reach
    {
        get
        {
            var step = Si.Seconds(Resolution);
            var (below, above) = Reading switch
            {
                TimerReading.Rounded => (step / 2, step / 2),
                TimerReading.Truncated or TimerReading.TickDifferenceSynchronousStart => (0, step),
                _ => (step, step),
            };
            return (Si.Duration(below), Si.Duration(above));
        }
    }
}
