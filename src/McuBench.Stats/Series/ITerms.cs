using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>Terms of a sum as they are made from samples, one at a time or four.</summary>
internal interface ITerms
{
    /// <summary>Whether extremes are found from <see cref="Eight"/>, as narrow lanes allow, rather than from the
    /// terms.</summary>
    static abstract bool IsNarrow { get; }

    /// <summary>How many there are.</summary>
    int Count { get; }

    /// <summary>The terms at four places from an index on.</summary>
    Vector256<double> Four(int index);

    /// <summary>The terms at eight places from an index on, where they are single.</summary>
    Vector256<float> Eight(int index);

    /// <summary>The term at an index: the same bits as its part of four.</summary>
    double One(int index);
}
