namespace McuBench.Stats.Hypotheses;

/// <summary>Walks along two ascending spans at once, from one distinct value to the next. O(n) in all.</summary>
internal ref struct TieWalk(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
{
    private readonly ReadOnlySpan<double> _first = first;
    private readonly ReadOnlySpan<double> _second = second;

    /// <summary>How many values of the first span lie below the present one.</summary>
    internal int FirstBelow { get; private set; }

    /// <summary>How many values of the second span lie below the present one.</summary>
    internal int SecondBelow { get; private set; }

    /// <summary>How many values of the first span equal the present one.</summary>
    internal int FirstEqual { get; private set; }

    /// <summary>How many values of the second span equal the present one.</summary>
    internal int SecondEqual { get; private set; }

    /// <summary>How many values of both spans equal the present one.</summary>
    internal readonly int Size => FirstEqual + SecondEqual;

    /// <summary>The mean rank of the values that equal the present one, among those of both spans.</summary>
    internal readonly double Rank => (double)FirstBelow + SecondBelow + ((Size + 1) / 2.0);

    /// <summary>Goes to the next distinct value; false where there is none.</summary>
    internal bool MoveNext()
    {
        FirstBelow += FirstEqual;
        SecondBelow += SecondEqual;
        bool more = FirstBelow < _first.Length;
        if (!more && SecondBelow == _second.Length)
        {
            return false;
        }

        double value = more ? _first[FirstBelow] : _second[SecondBelow];
        if (SecondBelow < _second.Length)
        {
            value = Math.Min(value, _second[SecondBelow]);
        }

        FirstEqual = RunOf(value, _first[FirstBelow..]);
        SecondEqual = RunOf(value, _second[SecondBelow..]);
        return true;
    }

    private static int RunOf(double value, ReadOnlySpan<double> rest)
    {
        int length = 0;
        while (length < rest.Length && rest[length] == value)
        {
            length++;
        }

        return length;
    }
}
