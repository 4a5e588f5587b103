namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of the runs test about the median.</summary>
/// <param name="Runs">The number of runs: of stretches in which all values lie on one side of the median.</param>
/// <param name="Above">The number of values above the median.</param>
/// <param name="Below">The number of values below the median.</param>
/// <param name="LeftOut">The number of values that took no part, being equal to the median.</param>
/// <param name="Expected">The number of runs that chance gives on average.</param>
/// <param name="Z">Runs less expected, in standard deviations, without a correction for continuity; null where only one number
/// of runs was possible.</param>
/// <param name="PValue">The probability, in random order, of a number of runs at least as far out; twice the smaller tail for a
/// two-sided test, 1 at most.</param>
/// <param name="Method">The method's name, which says whether it was exact.</param>
/// <param name="Options">What was asked.</param>
public sealed record RunsResult(
    int Runs,
    int Above,
    int Below,
    int LeftOut,
    double Expected,
    double? Z,
    double PValue,
    string Method,
    RunsOptions Options
);
