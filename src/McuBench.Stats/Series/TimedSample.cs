using System.Runtime.InteropServices;

namespace McuBench.Stats.Series;

/// <summary>A sample and its time.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct TimedSample(double Time, double Value)
{
    /// <summary>The area under a straight line to a later sample.</summary>
    internal double AreaTo(TimedSample later) => (later.Time - Time) * ((Value + later.Value) / 2);

    /// <summary>The area where the sample holds until a later one.</summary>
    internal double HeldTo(TimedSample later) => (later.Time - Time) * Value;

    internal void Write(ref StateWriter state)
    {
        state.Write(Time);
        state.Write(Value);
    }

    internal static TimedSample Read(ref StateReader state) => new(state.ReadFinite(), state.ReadFinite());
}
