using System.Globalization;

namespace McuBench.Stats.Resampling;

/// <summary>Runs of neighbouring values drawn whole.</summary>
internal sealed class MovingBlockScheme(int length)
    : ResamplingScheme(string.Create(CultureInfo.InvariantCulture, $"moving blocks of {length}"))
{
    internal override void Accept(int count) => Check.AtLeast(count, length + 1, "sample");

    internal override int Draw(Span<int> places, int count, RandomStream random)
    {
        int filled = 0;
        while (filled < count)
        {
            int start = random.Index(count - length + 1);
            // The last run is cut where the resample is full.
            for (int i = 0; i < length && filled < count; i++)
            {
                places[filled++] = start + i;
            }
        }

        return count;
    }

    internal override int[][][]? JackknifeUnits(int count) => null;
}
