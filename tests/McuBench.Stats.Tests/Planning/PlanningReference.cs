namespace McuBench.Stats.Tests.Planning;

/// <summary>What R and SciPy found for plans: rows of inputs with results after them.</summary>
internal static class PlanningReference
{
    /// <summary>Holds each row's results, by both programs, against ours.</summary>
    /// <param name="table">The table's name.</param>
    /// <param name="inputs">How many numbers of a row are inputs.</param>
    /// <param name="tolerance">Relative.</param>
    /// <param name="plan">Our results from a row's inputs.</param>
    internal static void Holds(string table, int inputs, double tolerance, Func<double[], double[]> plan)
    {
        foreach (string file in new[] { "planning-r", "planning-scipy" })
        {
            var reference = ReferenceCase.Of(file, table);
            string[] names = reference.Names();
            Assert.NotEmpty(names);
            foreach (string name in names)
            {
                double[] row = reference.Numbers(name);
                Agree.Relative(row.AsSpan(inputs), plan(row[..inputs]), tolerance);
            }
        }
    }
}
