namespace McuBench.Simulation;

/// <summary>What many studies of one scenario came to.</summary>
public sealed record CellResult
{
    /// <summary>How many equal parts of a step the truth's place is told apart in.</summary>
    public const int Places = 10;

    /// <summary>The scenario.</summary>
    public required Scenario Scenario { get; init; }

    /// <summary>How many studies.</summary>
    public required int Studies { get; init; }

    /// <summary>Shares in which the library's interval held the first board's true run time, over all studies.</summary>
    public required double RunTimeHeld { get; init; }

    /// <summary>The same at the place of the truth between two steps at which it held it least, of ten.</summary>
    public required double RunTimeHeldAtWorst { get; init; }

    /// <summary>Shares in which the library's interval held the true ratio.</summary>
    public required double RatioHeld { get; init; }

    /// <summary>The mean width of the ratio's interval on logarithms.</summary>
    public required double Width { get; init; }

    /// <summary>Each candidate's share of studies in which it held the true ratio, and its mean width.</summary>
    public required IReadOnlyList<(string Name, double Held, double Width)> Candidates { get; init; }

    /// <summary>The share of studies with the verdict "different" between equal boards; absent where they differ.</summary>
    public required double? FalselyDifferent { get; init; }

    /// <summary>The share of studies with a verdict "within the margin" at a true difference that just reaches it; absent
    /// for equal boards.</summary>
    public required double? FalselyWithin { get; init; }

    /// <summary>The share of studies without a verdict.</summary>
    public required double WithoutVerdict { get; init; }

    /// <summary>Three standard errors of a share at a goal.</summary>
    public double Allowance(double goal) => 3 * Math.Sqrt(goal * (1 - goal) / Studies);

    /// <summary>The narrowest of all that hold the ratio in at least 94 %, three simulation errors allowed: the library's
    /// own rule or a candidate.</summary>
    public (string Name, double Width)? Narrowest
    {
        get
        {
            var enough = CoverageGoal - Allowance(CoverageGoal);
            return Candidates
                .Prepend((Name: "library", Held: RatioHeld, Width))
                .Where(c => c.Held >= enough && c.Width > 0)
                .OrderBy(c => Math.Round(c.Width, WidthDigits))
                .Select(c => ((string, double)?)(c.Name, c.Width))
                .FirstOrDefault();
        }
    }

    private const int WidthDigits = 12;

    /// <summary>The share of intervals that are to hold the truth where trials are independent.</summary>
    public const double CoverageGoal = 0.94;
}
