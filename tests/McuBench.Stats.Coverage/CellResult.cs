namespace McuBench.Stats.Coverage;

/// <summary>What many runs of a procedure on one population at one count came to.</summary>
/// <param name="Procedure">The procedure.</param>
/// <param name="Population">The population.</param>
/// <param name="Count">Values a group.</param>
/// <param name="Runs">How many runs.</param>
/// <param name="Answers">In how many of them there was an answer.</param>
/// <param name="Happened">In how many the interval held the truth, or the test rejected.</param>
/// <param name="MeanWidth">The mean width of the intervals with two ends; infinite where all lack one.</param>
public sealed record CellResult(
    Procedure Procedure,
    Population Population,
    int Count,
    int Runs,
    int Answers,
    int Happened,
    double MeanWidth
)
{
    private const double LeastShareOfAnswers = 0.01;

    /// <summary>Whether there were answers enough to speak of.</summary>
    public bool IsAnswered => Answers > LeastShareOfAnswers * Runs;

    /// <summary>The share of intervals that held the truth, of those that there were; or of runs in which the test rejected,
    /// no answer counting as no rejection.</summary>
    public double Share => (double)Happened / (Procedure.IsTest ? Runs : Answers);

    /// <summary>Whether the promise binds here.</summary>
    public bool IsPromised => Procedure.Promise.Binds(Population.Shape, Count);

    /// <summary>Whether a promise is missed by more than three simulation errors.</summary>
    public bool Misses
    {
        get
        {
            if (!IsAnswered || !IsPromised)
            {
                return false;
            }

            double nominal = Procedure.Nominal;
            double allowance = 3 * Math.Sqrt(nominal * (1 - nominal) / (Procedure.IsTest ? Runs : Answers));
            double shortfall = Procedure.IsTest ? Share - nominal : nominal - Share;
            return Procedure.Promise.Exact.HasFlag(Population.Shape)
                ? Math.Abs(shortfall) > allowance
                : shortfall > allowance;
        }
    }
}
