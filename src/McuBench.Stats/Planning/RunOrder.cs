using System.Collections.Immutable;
using System.Globalization;
using McuBench.Stats.Resampling;

namespace McuBench.Stats.Planning;

/// <summary>In which order treatments (setups, say) are run, block after block, each treatment once in a block.</summary>
/// <remarks>
/// <para>Immutable; equal when seed, method and all places are equal. Treatments are numbered from 0. The same seed gives
/// the same order on every machine.</para>
/// <para>Running all trials of one setup and then all of the other puts drift of temperature, supply and clock into the
/// difference between them. In blocks it falls on all alike, and is taken out by comparing within blocks.</para>
/// </remarks>
public sealed record RunOrder
{
    private const int MostPlaces = 1_000_000;

    private RunOrder(ImmutableArray<ImmutableArray<int>> blocks, ulong seed, string method)
    {
        Blocks = blocks;
        Seed = seed;
        Method = method;
    }

    /// <summary>The blocks in the order of running, each with every treatment once.</summary>
    public ImmutableArray<ImmutableArray<int>> Blocks { get; }

    /// <summary>The number of treatments.</summary>
    public int Treatments => Blocks[0].Length;

    /// <summary>The seed that the order came from.</summary>
    public ulong Seed { get; }

    /// <summary>The name of the design, as in "randomised blocks".</summary>
    public string Method { get; }

    /// <summary>Randomised complete blocks: in each block the treatments stand in a random order of their own
    /// (fisher-1935). O(treatments · blocks).</summary>
    /// <param name="treatments">The number of treatments, 2 or more.</param>
    /// <param name="blocks">The number of blocks, 1 or more; as many values will each treatment have.</param>
    /// <param name="seed">The seed.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is too small, or there would be more than 1e6
    /// places.</exception>
    public static RunOrder RandomisedBlocks(int treatments, int blocks, ulong seed)
    {
        Accept(treatments, blocks, nameof(blocks));
        int[][] order = new int[blocks][];
        var random = RandomStream.Of(seed);
        for (int block = 0; block < blocks; block++)
        {
            order[block] = [.. Enumerable.Range(0, treatments)];
            random.Shuffle<int>(order[block]);
        }

        return new RunOrder(Frozen(order), seed, "randomised blocks");
    }

    /// <summary>Williams' design, balanced for what a trial leaves to the next one, such as heat or charge (williams-1949):
    /// every treatment stands equally often in each place, and follows each other treatment equally often within blocks.
    /// O(treatments · blocks).</summary>
    /// <remarks>The balance takes as many blocks as treatments for an even number of them, and twice as many for an odd one;
    /// repeats add whole sets, each with labels and order of blocks drawn anew.</remarks>
    /// <param name="treatments">The number of treatments, 2 or more.</param>
    /// <param name="repeats">How many balanced sets of blocks, 1 or more.</param>
    /// <param name="seed">The seed.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is too small, or there would be more than 1e6
    /// places.</exception>
    public static RunOrder Williams(int treatments, int repeats, ulong seed)
    {
        Accept(treatments, repeats, nameof(repeats));
        int inSet = treatments % 2 == 0 ? treatments : 2 * treatments;
        Accept(treatments, (long)inSet * repeats, nameof(repeats));
        int[][] order = new int[inSet * repeats][];
        var random = RandomStream.Of(seed);
        for (int repeat = 0; repeat < repeats; repeat++)
        {
            Span<int[]> set = order.AsSpan(repeat * inSet, inSet);
            int[] labels = [.. Enumerable.Range(0, treatments)];
            random.Shuffle<int>(labels);
            for (int block = 0; block < inSet; block++)
            {
                set[block] = Block(block, treatments, labels);
            }

            random.Shuffle(set);
        }

        return new RunOrder(Frozen(order), seed, "Williams' balanced design");
    }

    /// <summary>Whether seed, method and every place are equal.</summary>
    public bool Equals(RunOrder? other) =>
        other is not null
        && Seed == other.Seed
        && string.Equals(Method, other.Method, StringComparison.Ordinal)
        && Blocks.Length == other.Blocks.Length
        && Blocks.Zip(other.Blocks).All(pair => pair.First.SequenceEqual(pair.Second));

    /// <summary>A hash of what tells orders apart best.</summary>
    public override int GetHashCode() => HashCode.Combine(Seed, Method, Blocks.Length, Treatments);

    /// <summary>The order as <c>randomised blocks, seed 7: 1 0 2 | 0 2 1</c>.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Method}, seed {Seed}: {string.Join(" | ", Blocks.Select(block => string.Join(' ', block)))}"
        );

    /// <summary>One row of the design: 0, 1, t − 1, 2, t − 2, … shifted by the row's number, in which neighbours differ by
    /// each amount once; for odd counts the second half of the rows is the first one read backwards.</summary>
    private static int[] Block(int row, int treatments, int[] labels)
    {
        int[] block = new int[treatments];
        for (int place = 0; place < treatments; place++)
        {
            int step = (place + 1) / 2;
            int treatment = (place % 2 == 1 ? step : treatments - step) + row;
            block[place] = labels[treatment % treatments];
        }

        if (row >= treatments)
        {
            Array.Reverse(block);
        }

        return block;
    }

    private static ImmutableArray<ImmutableArray<int>> Frozen(int[][] order) =>
        [.. order.Select(block => ImmutableArray.Create(block))];

    private static void Accept(int treatments, long blocks, string name)
    {
        if (treatments < 2)
        {
            throw Check.OutOfRange(nameof(treatments), "Count of treatments", "at least 2", treatments);
        }

        if (blocks < 1)
        {
            throw Check.OutOfRange(name, "Count of blocks or repeats", "at least 1", blocks);
        }

        if (treatments * blocks > MostPlaces)
        {
            throw Check.OutOfRange(name, "Count of places", "at most 1E+06", treatments * blocks);
        }
    }
}
