using System.Globalization;

namespace McuBench.Stats.Tests;

/// <summary>Asserts that numbers agree to a stated relative tolerance.</summary>
internal static class Agree
{
    /// <summary>Asserts that a number differs from the expected one by no more than the tolerance times it.</summary>
    internal static void Relative(double expected, double actual, double tolerance)
    {
        double error = expected == 0 ? Math.Abs(actual) : Math.Abs((actual - expected) / expected);
        Assert.True(
            error <= tolerance,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Expected {expected:R} to a relative {tolerance:0.0E0}; was {actual:R}, off by {error:0.0E0}."
            )
        );
    }

    /// <summary>Asserts the same of each pair of numbers.</summary>
    internal static void Relative(ReadOnlySpan<double> expected, ReadOnlySpan<double> actual, double tolerance)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Relative(expected[i], actual[i], tolerance);
        }
    }
}
