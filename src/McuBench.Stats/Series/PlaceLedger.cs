namespace McuBench.Stats.Series;

/// <summary>Where the samples of an evenly sampled series are and where they are missing, and the samples at both edges
/// of each gap.</summary>
internal sealed class PlaceLedger
{
    private long _gaps;
    private long _firstPlace = -1;
    private long _lastPlace = -1;
    private double _first;
    private double _last;
    private double _beforeLast;

    /// <summary>Places so far, those of missing samples included.</summary>
    internal long Places { get; private set; }

    /// <summary>Places without a sample.</summary>
    internal long Missing { get; private set; }

    /// <summary>Steps between samples that are there, that lie in gaps.</summary>
    internal long Uncovered { get; private set; }

    internal long Gaps => _gaps;

    /// <summary>Steps from the first sample that is there to the last one.</summary>
    internal long Span => _lastPlace - _firstPlace;

    internal bool IsEmpty => _firstPlace < 0;

    internal bool IsAtOddPlace => long.IsOddInteger(Places);

    /// <summary>What straight lines across the gaps make, in steps.</summary>
    internal ExactSum Bridged { get; private set; } = new();

    /// <summary>The samples behind which a gap begins, and the last one.</summary>
    internal ExactSum Stops
    {
        get
        {
            ExactSum all = _stops.Copy();
            all.AddFinite(_last);
            return all;
        }
    }

    /// <summary>The samples with which a gap ends, and the first one.</summary>
    internal ExactSum Starts
    {
        get
        {
            ExactSum all = _starts.Copy();
            all.AddFinite(_first);
            return all;
        }
    }

    private ExactSum _starts = new();
    private ExactSum _stops = new();

    /// <summary>Whether every other sample can be left out: none is missing, and there are three.</summary>
    internal bool CanHalve => Missing == 0 && Places > 2;

    /// <summary>Adds what the ends make in the rule on all samples less that on those at even places, twice.</summary>
    internal void AddTwiceHalvingEnds(ExactSum twice)
    {
        double lastEven = IsAtOddPlace ? _last : _beforeLast;
        for (int i = 0; i < 2; i++)
        {
            twice.AddFinite(_first);
            twice.AddFinite(lastEven);
        }

        if (!IsAtOddPlace)
        {
            // The step behind the last even place has no part in the comparison.
            twice.AddFinite(-_beforeLast);
            twice.AddFinite(-_last);
        }
    }

    /// <summary>Takes samples of which none is missing.</summary>
    internal void Take(double first, double beforeLast, double last, long count)
    {
        Join(first, Places);
        _beforeLast = count > 1 ? beforeLast : _last;
        _last = last;
        Places += count;
        _lastPlace = Places - 1;
    }

    internal void TakeMissing(long count)
    {
        Missing += count;
        Places += count;
    }

    /// <summary>Takes what another ledger has, as following directly.</summary>
    internal void Append(PlaceLedger next)
    {
        _starts.Merge(next._starts);
        _stops.Merge(next._stops);
        Bridged.Merge(next.Bridged);
        _gaps += next._gaps;
        Uncovered += next.Uncovered;
        Missing += next.Missing;
        long before = Places;
        Places += next.Places;
        if (next.IsEmpty)
        {
            return;
        }

        Join(next._first, before + next._firstPlace);
        _beforeLast = next.Span > 0 ? next._beforeLast : _last;
        _last = next._last;
        _lastPlace = before + next._lastPlace;
    }

    internal void Write(ref StateWriter state)
    {
        state.Write(Places);
        state.Write(Missing);
        state.Write(Uncovered);
        state.Write(_gaps);
        state.Write(_firstPlace);
        state.Write(_lastPlace);
        state.Write(_first);
        state.Write(_last);
        state.Write(_beforeLast);
        state.Write(_starts);
        state.Write(_stops);
        state.Write(Bridged);
    }

    internal static PlaceLedger Read(ref StateReader state) =>
        new()
        {
            Places = state.ReadCount(),
            Missing = state.ReadCount(),
            Uncovered = state.ReadCount(),
            _gaps = state.ReadCount(),
            _firstPlace = state.ReadInteger(),
            _lastPlace = state.ReadInteger(),
            _first = state.ReadFinite(),
            _last = state.ReadFinite(),
            _beforeLast = state.ReadFinite(),
            _starts = state.ReadSum(),
            _stops = state.ReadSum(),
            Bridged = state.ReadSum(),
        };

    private void Join(double next, long place)
    {
        if (IsEmpty)
        {
            _first = next;
            _firstPlace = place;
            return;
        }

        long steps = place - _lastPlace;
        if (steps > 1)
        {
            _gaps++;
            Uncovered += steps;
            _stops.AddFinite(_last);
            _starts.AddFinite(next);
            Bridged.AddFinite((_last / 2 + next / 2) * steps);
        }
    }
}
