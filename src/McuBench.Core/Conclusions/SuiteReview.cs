namespace McuBench.Core.Conclusions;

/// <summary>Whether a verdict over several workloads hangs on one of them.</summary>
internal static class SuiteReview
{
    public static IEnumerable<Finding> Of(IReadOnlyList<SuiteComparison> suites)
    {
        foreach (var suite in suites.Where(s => s.Mean.Quantity == ComparedQuantity.RunTime && s.Mean.Less is not null))
        {
            string[] deciding = [.. suite.Deciding.Select(w => w.Name)];
            if (deciding.Length == 0)
            {
                continue;
            }

            var without = suite.LeftOut.First(w => w.ChangesVerdict);
            yield return new Finding(
                FindingKind.OneWorkloadDecides,
                Severity.Caution,
                $"{suite.First.Name} and {suite.Second.Name}",
                $"The mean ratio of run times over {suite.Members.Count} workloads is {Said.Number(suite.Mean.Ratio.Value)}; without {deciding[0]} it is {Said.Number(without.Mean.Ratio.Value)} and the verdict another{(deciding.Length > 1 ? $" (so also without {Said.List(deciding[1..])})" : "")}.",
                "Report the workloads one by one, or say which of them the mean rests on.",
                [
                    new("mean ratio", suite.Mean.Ratio.Value),
                    new($"mean ratio without {deciding[0]}", without.Mean.Ratio.Value),
                    new("workloads", suite.Members.Count),
                ],
                []
            );
        }
    }
}
