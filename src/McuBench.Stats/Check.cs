using System.Globalization;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats;

/// <summary>The argument checks that every room shares, so that each refusal is worded once.</summary>
internal static class Check
{
    /// <summary>Refuses an empty span and any value that is NaN or infinite, naming its index.</summary>
    internal static void Finite(
        ReadOnlySpan<double> values,
        [CallerArgumentExpression(nameof(values))] string name = ""
    )
    {
        AtLeast(values.Length, 1, name);
        if (AllFinite(values))
        {
            return;
        }

        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                throw OutOfRange(name, Invariant($"Value at index {i}"), "a finite number", values[i]);
            }
        }
    }

    /// <summary>Refuses a number that is NaN or infinite.</summary>
    internal static void Finite(double value, string what, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value))
        {
            throw OutOfRange(name, what, "a finite number", value);
        }
    }

    /// <summary>Refuses what <see cref="Finite(ReadOnlySpan{double}, string)"/> refuses, and any value at or below 0.</summary>
    internal static void Positive(
        ReadOnlySpan<double> values,
        [CallerArgumentExpression(nameof(values))] string name = ""
    )
    {
        AtLeast(values.Length, 1, name);
        for (int i = 0; i < values.Length; i++)
        {
            if (!(values[i] > 0 && double.IsFinite(values[i])))
            {
                throw OutOfRange(name, Invariant($"Value at index {i}"), "a finite number above 0", values[i]);
            }
        }
    }

    /// <summary>Refuses a number that is not finite and above 0.</summary>
    internal static void Positive(double value, string what, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && double.IsFinite(value)))
        {
            throw OutOfRange(name, what, "a finite number above 0", value);
        }
    }

    /// <summary>Refuses a probability outside [0, 1].</summary>
    internal static void Probability(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= 0 && value <= 1))
        {
            throw OutOfRange(name, "Probability", "between 0 and 1, ends included", value);
        }
    }

    /// <summary>Refuses a confidence outside (0, 1).</summary>
    internal static void Confidence(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && value < 1))
        {
            throw OutOfRange(name, "Confidence", "above 0 and below 1", value);
        }
    }

    /// <summary>Refuses degrees of freedom that are not above 0; positive infinity is allowed.</summary>
    internal static void DegreesOfFreedom(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0))
        {
            throw OutOfRange(name, "Degrees of freedom", "above 0", value);
        }
    }

    /// <summary>Refuses too few values, saying how many would do.</summary>
    internal static void AtLeast(int count, int minimum, string name)
    {
        if (count < minimum)
        {
            throw new ArgumentException(Invariant($"Count of values must be at least {minimum}; was {count}."), name);
        }
    }

    /// <summary>Refuses two spans that should run side by side and differ in length.</summary>
    internal static void SameCount(int count, int expected, string what, string each, string name)
    {
        if (count != expected)
        {
            throw new ArgumentException(
                Invariant($"{what} must be {expected}, one for each {each}; was {count}."),
                name
            );
        }
    }

    /// <summary>Refuses values whose result no number can hold; returns the result otherwise.</summary>
    internal static double Representable(double result, string what, string name) =>
        double.IsFinite(result)
            ? result
            : throw new ArgumentOutOfRangeException(
                name,
                $"{what} of the values must be below 1.8E308; was above it, so give the values in a larger unit."
            );

    /// <summary>Refuses an enum value that is not one of the named ones.</summary>
    internal static void Named<T>(T value, [CallerArgumentExpression(nameof(value))] string name = "")
        where T : struct, Enum
    {
        if (!Enum.IsDefined(value))
        {
            throw new ArgumentOutOfRangeException(
                name,
                value,
                Invariant($"{typeof(T).Name} must be one of its named values; was {value}.")
            );
        }
    }

    /// <summary>The exception for a number that breaks a rule, in the house's wording.</summary>
    internal static ArgumentOutOfRangeException OutOfRange(string name, string what, string rule, double was) =>
        new(name, was, Invariant($"{what} must be {rule}; was {was}."));

    private static bool AllFinite(ReadOnlySpan<double> values)
    {
        // A value less itself is 0, but NaN for NaN and infinities, and NaN stays in the sum.
        Vector256<double> sums = Vector256<double>.Zero;
        ReadOnlySpan<Vector256<double>> fours = MemoryMarshal.Cast<double, Vector256<double>>(values);
        foreach (Vector256<double> four in fours)
        {
            sums += four - four;
        }

        double sum = Vector256.Sum(sums);
        foreach (double value in values[(fours.Length * Vector256<double>.Count)..])
        {
            sum += value - value;
        }

        return sum == 0;
    }

    private static string Invariant(DefaultInterpolatedStringHandler text) =>
        string.Create(CultureInfo.InvariantCulture, ref text);
}
