namespace McuBench.Core.Supply.Traces;

/// <summary>What a column of a trace in text may hold.</summary>
public enum TraceColumn
{
    /// <summary>The time of the sample; required. Its head is "time" unless said otherwise, with its unit: "time [ms]".</summary>
    Time,

    /// <summary>The supply current; required. Head "current", with its unit: "current [mA]".</summary>
    Current,

    /// <summary>The voltage at the measuring point. Head "voltage", with its unit: "voltage [V]".</summary>
    Voltage,

    /// <summary>A line that a board sets while it works: 0 is low, any other number high. Head "marker".</summary>
    Marker,
}
