using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>How a trace is written down in text, and what is to be done where it is at fault.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record TraceTextOptions
{
    /// <summary>Commas between fields, decimal points, no comments, and a stop at the first fault.</summary>
    public static TraceTextOptions Default { get; } = new();

    /// <summary>Delimiter, comments, and whether other columns are skipped.</summary>
    public CsvOptions Table
    {
        get;
        init => field = Require.Given(value, nameof(Table));
    } = CsvOptions.Default;

    /// <summary>Which column holds what; the heads are the properties' names unless said otherwise. A constant in it
    /// stands for every row: "3.3 V" for the voltage.</summary>
    public ColumnMap<TraceColumn> Columns
    {
        get;
        init => field = Require.Given(value, nameof(Columns));
    } = new();

    /// <summary>Whether numbers have a decimal comma; the delimiter must then be another character.</summary>
    public bool DecimalComma { get; init; }

    /// <summary>What becomes of the trace at a row that can't be read, or whose time is not after the one before.</summary>
    public BadRows BadRows
    {
        get;
        init => field = Require.Defined(value, "Treatment of bad rows", nameof(BadRows));
    }

    /// <summary>The time at which the meter's clock starts again from zero, above zero; absent where it never does. A
    /// time that falls back by more than half of it is taken to have started again.</summary>
    public Duration? TimeWrapsAt
    {
        get;
        init =>
            field = value is { } time ? Require.Positive(time, "Time at which times wrap", nameof(TimeWrapsAt)) : null;
    }

    internal double WrapSeconds => TimeWrapsAt is { } time ? Si.Seconds(time) : 0;
}
