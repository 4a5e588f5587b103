namespace McuBench.Stats.Series;

/// <summary>The samples at the ends of a series with times, and its gaps.</summary>
internal sealed class TimedLedger
{
    private double _firstTime = double.NaN;
    private double _lastTime = double.NaN;
    private long _missingSinceLast;

    internal long Count { get; private set; }

    internal long Missing { get; private set; }

    internal long Gaps { get; private set; }

    internal TimedSample First { get; private set; }

    internal TimedSample Second { get; private set; }

    internal TimedSample BeforeLast { get; private set; }

    internal TimedSample Last { get; private set; }

    internal double Least { get; private set; } = double.PositiveInfinity;

    internal double Greatest { get; private set; } = double.NegativeInfinity;

    /// <summary>The time that lies in gaps.</summary>
    internal ExactSum Uncovered { get; private set; } = new();

    /// <summary>What straight lines across the gaps make.</summary>
    internal ExactSum Bridged { get; private set; } = new();

    /// <summary>The first time, of a missing sample too; null before there is one.</summary>
    internal double? FirstTime => double.IsNaN(_firstTime) ? null : _firstTime;

    /// <summary>The last time, of a missing sample too; null before there is one.</summary>
    internal double? LastTime => double.IsNaN(_lastTime) ? null : _lastTime;

    internal bool MissesBeforeFirst => FirstTime is { } time && (Count == 0 || time < First.Time);

    internal bool IsGapTo(TimedSample next, bool missesBefore, double longestStep) =>
        missesBefore || _missingSinceLast > 0 || next.Time - Last.Time > longestStep;

    /// <summary>The area where the last sample holds until the next.</summary>
    internal double HeldTo(TimedSample next) => Last.HeldTo(next);

    internal void NoteGap(TimedSample next)
    {
        Gaps++;
        Uncovered.AddFinite(next.Time - Last.Time);
        Bridged.AddFinite(Last.AreaTo(next));
    }

    internal void Take(TimedSample sample)
    {
        See(sample.Time);
        if (Count == 0)
        {
            First = sample;
        }
        else if (Count == 1)
        {
            Second = sample;
        }

        BeforeLast = Last;
        Last = sample;
        Least = Math.Min(Least, sample.Value);
        Greatest = Math.Max(Greatest, sample.Value);
        _missingSinceLast = 0;
        Count++;
    }

    /// <summary>Takes many samples behind at least two, none of them missing and none behind a gap.</summary>
    internal void TakeMany(
        TimedSample beforeLast,
        TimedSample last,
        (double Least, double Greatest) extremes,
        int count
    )
    {
        BeforeLast = beforeLast;
        Last = last;
        Least = Math.Min(Least, extremes.Least);
        Greatest = Math.Max(Greatest, extremes.Greatest);
        Count += count;
        See(last.Time);
    }

    internal void TakeMissing(double time)
    {
        See(time);
        Missing++;
        _missingSinceLast++;
    }

    /// <summary>Takes what a later ledger has; what lies between the two is the caller's.</summary>
    internal void Append(TimedLedger next)
    {
        Uncovered.Merge(next.Uncovered);
        Bridged.Merge(next.Bridged);
        Gaps += next.Gaps;
        Missing += next.Missing;
        _firstTime = FirstTime ?? next._firstTime;
        _lastTime = next.LastTime ?? _lastTime;
        if (next.Count == 0)
        {
            _missingSinceLast += next._missingSinceLast;
            return;
        }

        Second =
            Count == 0 ? next.Second
            : Count == 1 ? next.First
            : Second;
        First = Count == 0 ? next.First : First;
        BeforeLast = next.Count > 1 ? next.BeforeLast : Last;
        Last = next.Last;
        Least = Math.Min(Least, next.Least);
        Greatest = Math.Max(Greatest, next.Greatest);
        _missingSinceLast = next._missingSinceLast;
        Count += next.Count;
    }

    internal void Write(ref StateWriter state)
    {
        state.Write(Count);
        state.Write(Missing);
        state.Write(Gaps);
        state.Write(_missingSinceLast);
        state.Write(_firstTime);
        state.Write(_lastTime);
        state.Write(Least);
        state.Write(Greatest);
        First.Write(ref state);
        Second.Write(ref state);
        BeforeLast.Write(ref state);
        Last.Write(ref state);
        state.Write(Uncovered);
        state.Write(Bridged);
    }

    internal static TimedLedger Read(ref StateReader state) =>
        new()
        {
            Count = state.ReadCount(),
            Missing = state.ReadCount(),
            Gaps = state.ReadCount(),
            _missingSinceLast = state.ReadCount(),
            _firstTime = state.ReadNumber(),
            _lastTime = state.ReadNumber(),
            Least = state.ReadNumber(),
            Greatest = state.ReadNumber(),
            First = TimedSample.Read(ref state),
            Second = TimedSample.Read(ref state),
            BeforeLast = TimedSample.Read(ref state),
            Last = TimedSample.Read(ref state),
            Uncovered = state.ReadSum(),
            Bridged = state.ReadSum(),
        };

    private void See(double time)
    {
        _firstTime = FirstTime ?? time;
        _lastTime = time;
    }
}
