using System.Buffers.Binary;

namespace McuBench.Stats.Series;

/// <summary>Reads the state of an accumulator, and refuses what can be none.</summary>
internal ref struct StateReader(ReadOnlySpan<byte> source)
{
    private readonly ReadOnlySpan<byte> _source = source;

    /// <summary>How many bytes were read.</summary>
    internal int Consumed { get; private set; }

    internal long ReadInteger()
    {
        if (_source.Length - Consumed < sizeof(long))
        {
            throw Refused("end within a number");
        }

        long number = BinaryPrimitives.ReadInt64LittleEndian(_source[Consumed..]);
        Consumed += sizeof(long);
        return number;
    }

    internal long ReadCount()
    {
        long count = ReadInteger();
        return count >= 0 ? count : throw Refused("have a count below 0");
    }

    internal double ReadNumber() => BitConverter.Int64BitsToDouble(ReadInteger());

    internal double ReadFinite()
    {
        double number = ReadNumber();
        return double.IsFinite(number) ? number : throw Refused("have a number that is not finite");
    }

    internal ExactSum ReadSum()
    {
        var sum = ExactSum.Read(_source[Consumed..], out int size);
        Consumed += size;
        return sum;
    }

    private readonly ArgumentException Refused(string what) =>
        new(
            FormattableString.Invariant(
                $"Source must be a state as written; its {_source.Length} bytes {what}, at byte {Consumed}."
            ),
            "source"
        );
}
