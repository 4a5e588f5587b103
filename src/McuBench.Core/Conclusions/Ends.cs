namespace McuBench.Core.Conclusions;

/// <summary>How an interval's ends lie about its value.</summary>
internal enum Ends
{
    /// <summary>As far below as above (GUM 6.2): for what may be negative.</summary>
    Symmetric,

    /// <summary>Symmetric as long as the half-width is at most half of the value; wider ones are computed on logarithms,
    /// since what is measured can't be negative.</summary>
    Positive,

    /// <summary>As many times below as above, for ratios: exchanging the two sides gives the reciprocal.</summary>
    Logarithmic,
}
