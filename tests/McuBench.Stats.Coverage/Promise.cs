namespace McuBench.Stats.Coverage;

/// <summary>Where a procedure is to keep what it says.</summary>
/// <param name="On">The shapes on which it is to keep it.</param>
/// <param name="From">The least number of values a group.</param>
/// <param name="Exact">The shapes on which it is to keep it to the point, neither more nor less.</param>
/// <param name="Elsewhere">Why it is exempt from the other shapes and counts, as its doc comment says as well; null where
/// there are none.</param>
public sealed record Promise(Shapes On, int From = 3, Shapes Exact = Shapes.None, string? Elsewhere = null)
{
    /// <summary>Whether it binds on a shape at a number of values.</summary>
    public bool Binds(Shapes shape, int count) => On.HasFlag(shape) && count >= From;
}
