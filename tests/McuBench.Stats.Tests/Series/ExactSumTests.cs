using System.Numerics;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using McuBench.Stats.Series;

namespace McuBench.Stats.Tests.Series;

public sealed class ExactSumTests
{
    [Fact]
    public void Value_NothingAdded_IsZero() => Assert.Equal(0, new ExactSum().Value);

    [Theory]
    [InlineData(new[] { 1e300, 1.0, -1e300 }, 1.0)]
    [InlineData(new[] { 9007199254740992.0, 1.0 }, 9007199254740992.0)]
    [InlineData(new[] { 9007199254740992.0, 1.0, 1e-300 }, 9007199254740994.0)]
    [InlineData(new[] { 9007199254740994.0, 1.0 }, 9007199254740996.0)]
    [InlineData(new[] { -9007199254740992.0, -1.0, -1e-300 }, -9007199254740994.0)]
    [InlineData(new[] { 5e-324, 5e-324 }, 1e-323)]
    [InlineData(new[] { 2.2250738585072014e-308, -5e-324 }, 2.225073858507201e-308)]
    [InlineData(new[] { 1.7976931348623157e308, 1.7976931348623157e308, -1.7976931348623157e308 }, double.MaxValue)]
    [InlineData(new[] { -1.5, 0.25, -0.0 }, -1.25)]
    public void Value_FewTerms_IsRoundedOnceToEven(double[] terms, double expected)
    {
        var each = new ExactSum();
        foreach (double term in terms)
        {
            each.Add(term);
        }

        var together = new ExactSum();
        together.Add(terms);

        Assert.Equal(expected, each.Value);
        Assert.Equal(expected, together.Value);
    }

    [Fact]
    public void Value_AboveTheGreatestDouble_IsRefused()
    {
        var sum = new ExactSum();
        sum.Add([double.MaxValue, double.MaxValue]);

        InvalidOperationException refused = Assert.Throws<InvalidOperationException>(() => sum.Value);
        Assert.Equal("Sum must be below 1.8E308; was above it.", refused.Message);
    }

    [Theory]
    [InlineData(double.NaN, "NaN")]
    [InlineData(double.PositiveInfinity, "Infinity")]
    public void Add_NotFinite_IsRefusedAndLeavesTheSum(double term, string shown)
    {
        var sum = new ExactSum();
        sum.Add(3);

        ArgumentOutOfRangeException one = Assert.Throws<ArgumentOutOfRangeException>(nameof(term), () => sum.Add(term));
        ArgumentOutOfRangeException some = Assert.Throws<ArgumentOutOfRangeException>(
            "terms",
            () => sum.Add([1, term])
        );

        Assert.StartsWith($"Term must be a finite number; was {shown}.", one.Message, StringComparison.Ordinal);
        Assert.StartsWith(
            $"Value at index 1 must be a finite number; was {shown}.",
            some.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(3, sum.Value);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(5_000, 0)]
    [InlineData(5_000, -1070)]
    [InlineData(5_000, 960)]
    public void Add_SpansOfAllSizes_IsTheSumInWholeNumbers(int count, int exponent)
    {
        // Mantissas of all lengths, over 60 powers of two about the exponent.
        double[] terms =
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                    Math.ScaleB(
                        (long)TraceRule.Random(7, i) >> (int)(11 + TraceRule.Random(8, i) % 50),
                        exponent - 52 + (int)(TraceRule.Random(9, i) % 60)
                    )
                ),
        ];
        var sum = new ExactSum();
        sum.Add(terms);

        Assert.Equal(InWholeNumbers(terms), sum.Value);
    }

    [Property(Arbitrary = [typeof(Terms)])]
    public void Merge_AnyCutsAndOrder_GivesTheSameBytes(Terms terms, int seed)
    {
        var whole = new ExactSum();
        whole.Add(terms.Values);
        var random = new Random(seed);
        ExactSum[] parts = [new(), new(), new()];
        double[] shuffled = [.. terms.Values];
        random.Shuffle(shuffled);
        foreach (double term in shuffled)
        {
            parts[random.Next(parts.Length)].Add(term);
        }

        parts[2].Merge(parts[0]);
        parts[2].Merge(parts[1]);

        Assert.Equal(InWholeNumbers(terms.Values), whole.Value);
        Assert.Equal(Bytes(whole), Bytes(parts[2]));
    }

    [Property(Arbitrary = [typeof(Terms)])]
    public void Read_WhatWasWritten_IsTheSameSum(Terms terms)
    {
        var sum = new ExactSum();
        sum.Add(terms.Values);

        byte[] bytes = Bytes(sum);
        var read = ExactSum.Read([.. bytes, 77], out int size);
        read.Add(0.1);
        sum.Add(0.1);

        Assert.Equal(bytes.Length, size);
        Assert.Equal(Bytes(sum), Bytes(read));
    }

    [Fact]
    public void Merge_WithItself_DoublesIt()
    {
        var sum = new ExactSum();
        sum.Add([0.1, -7e20, 3e-200]);
        double once = sum.Value;
        sum.Merge(sum);

        Assert.Equal(2 * once, sum.Value);
    }

    [Fact]
    public void Size_SumOfManyLikeTerms_IsSomeTwentyBytes()
    {
        var sum = new ExactSum();
        sum.Add(TraceRule.Decimals(10_000));

        Assert.InRange(sum.Size, 11, 23);
    }

    [Fact]
    public void Write_TooShort_IsRefused()
    {
        var sum = new ExactSum();
        sum.Add(1);

        ArgumentException refused = Assert.Throws<ArgumentException>("destination", () => sum.Write(new byte[6]));
        Assert.StartsWith(
            "Destination must have at least 7 bytes for this sum; had 6.",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(new byte[] { })]
    [InlineData(new byte[] { 2, 0, 0 })]
    [InlineData(new byte[] { 0, 34, 1, 0, 0, 0 })]
    [InlineData(new byte[] { 0, 70, 2, 1, 0, 0, 0, 1, 0, 0, 0 })]
    public void Read_NoSum_IsRefused(byte[] bytes)
    {
        ArgumentException refused = Assert.Throws<ArgumentException>("source", () => ExactSum.Read(bytes, out _));
        Assert.StartsWith("Source must be a sum as written", refused.Message, StringComparison.Ordinal);
    }

    private static byte[] Bytes(ExactSum sum)
    {
        byte[] bytes = new byte[sum.Size];
        Assert.Equal(bytes.Length, sum.Write(bytes));
        return bytes;
    }

    /// <summary>The sum as a whole number of 2^-1074, to the nearest double by the division of whole numbers.</summary>
    private static double InWholeNumbers(double[] terms)
    {
        BigInteger total = 0;
        foreach (double term in terms)
        {
            long bits = BitConverter.DoubleToInt64Bits(term);
            int exponent = (int)(bits >> 52) & 0x7FF;
            BigInteger mantissa = (bits & 0xFFFFFFFFFFFFF) | (exponent > 0 ? 1L << 52 : 0);
            total += (term < 0 ? -mantissa : mantissa) << Math.Max(0, exponent - 1);
        }

        BigInteger size = BigInteger.Abs(total);
        int drop = Math.Max(0, (int)size.GetBitLength() - 53);
        BigInteger kept = size >> drop;
        BigInteger rest = size - (kept << drop);
        BigInteger half = drop == 0 ? 1 : BigInteger.One << (drop - 1);
        if (rest > half || (rest == half && !kept.IsEven))
        {
            kept++;
        }

        return total.Sign * Math.ScaleB((double)kept, drop - 1074);
    }

    /// <summary>Doubles of all sizes below 1E300, many of them alike, long enough for whole vectors.</summary>
    public sealed record Terms(double[] Values)
    {
        public static Arbitrary<Terms> Arbitrary() =>
            Arb.From(
                from count in Gen.Choose(1, 100)
                from spread in Gen.Choose(0, 900)
                from mantissas in Gen.Choose(int.MinValue, int.MaxValue).ListOf(count)
                from fine in Gen.Choose(0, 1 << 20).ListOf(count)
                from exponents in Gen.Choose(-spread, spread).ListOf(count)
                select new Terms([
                    .. mantissas.Zip(
                        fine.Zip(exponents),
                        (m, rest) => Math.ScaleB(m + Math.ScaleB(rest.First, -20), rest.Second)
                    ),
                ])
            );

        public override string ToString() => $"[{string.Join(", ", Values)}]";
    }
}
