namespace McuBench.Core.Conclusions;

/// <summary>A cost that rises and falls with the clock: constant + rising · f + falling / f, in SI units.</summary>
/// <remarks>
/// A task that waits t₀ at I_w + k_w f and computes N cycles at I_c + k_c f takes the charge
/// t₀ (I_w + k_w f) + (N/f)(I_c + k_c f): rising is k_w t₀, falling is I_c N. Their signs decide where it is least.
/// </remarks>
internal readonly record struct ClockCost(double Constant, double Rising, double Falling)
{
    public BestClockCase Case =>
        (Math.Sign(Rising), Math.Sign(Falling)) switch
        {
            (1, 1) => BestClockCase.Between,
            (0, 0) => BestClockCase.Flat,
            (-1, -1) => BestClockCase.EitherEnd,
            (1, _) => BestClockCase.Slowest,
            (0, -1) => BestClockCase.Slowest,
            _ => BestClockCase.Fastest,
        };

    public double At(double hertz) => Constant + Rising * hertz + Falling / hertz;

    /// <summary>The clock of the least cost, ends of the range left out of account: 0 for the slowest, infinite for the
    /// fastest; where both ends draw, the range decides which of the two.</summary>
    public double Best(double lowest, double highest) =>
        Case switch
        {
            BestClockCase.Between => Math.Sqrt(Falling / Rising),
            BestClockCase.Slowest => 0,
            BestClockCase.Fastest => double.PositiveInfinity,
            BestClockCase.EitherEnd => At(lowest) < At(highest) ? 0 : double.PositiveInfinity,
            _ => Math.Sqrt(lowest * highest),
        };
}
