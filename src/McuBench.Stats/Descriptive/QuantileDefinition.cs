namespace McuBench.Stats.Descriptive;

/// <summary>
/// The nine sample quantiles of Hyndman and Fan (hyndman-fan-1996), under their numbers. They differ in how they read a
/// quantile between two values, and agree as the count grows.
/// </summary>
public enum QuantileDefinition
{
    /// <summary>Inverse of the empirical distribution function: always one of the values.</summary>
    HyndmanFan1 = 1,

    /// <summary>As 1, with the mean of the two values where the function is level at the probability.</summary>
    HyndmanFan2 = 2,

    /// <summary>The value whose rank is nearest to count times probability, the even rank at a tie.</summary>
    HyndmanFan3 = 3,

    /// <summary>Linear interpolation of the empirical distribution function.</summary>
    HyndmanFan4 = 4,

    /// <summary>Linear interpolation, value k at probability (k − 1/2)/n.</summary>
    HyndmanFan5 = 5,

    /// <summary>Linear interpolation, value k at probability k/(n + 1), its mean rank.</summary>
    HyndmanFan6 = 6,

    /// <summary>Linear interpolation, value k at probability (k − 1)/(n − 1), so that 0 and 1 give the least and the
    /// greatest value: what R, NumPy and spreadsheets use unless told otherwise.</summary>
    HyndmanFan7 = 7,

    /// <summary>Linear interpolation, value k at probability (k − 1/3)/(n + 1/3): about median-unbiased whatever the
    /// distribution; what the authors recommend.</summary>
    HyndmanFan8 = 8,

    /// <summary>Linear interpolation, value k at probability (k − 3/8)/(n + 1/4): about unbiased for normal data.</summary>
    HyndmanFan9 = 9,
}
