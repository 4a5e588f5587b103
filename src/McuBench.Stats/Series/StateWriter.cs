using System.Buffers.Binary;

namespace McuBench.Stats.Series;

/// <summary>Writes the state of an accumulator, in little-endian order.</summary>
internal ref struct StateWriter(Span<byte> destination)
{
    private readonly Span<byte> _destination = destination;

    /// <summary>How many bytes were written.</summary>
    internal int Written { get; private set; }

    internal void Write(long number)
    {
        BinaryPrimitives.WriteInt64LittleEndian(Next(sizeof(long)), number);
        Written += sizeof(long);
    }

    internal void Write(double number) => Write(BitConverter.DoubleToInt64Bits(number));

    internal void Write(ExactSum sum) => Written += sum.Write(Next(sum.Size));

    private readonly Span<byte> Next(int size)
    {
        if (_destination.Length - Written < size)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Destination must have room for the state, {Written + size} bytes and more; had {_destination.Length}."
                ),
                "destination"
            );
        }

        return _destination[Written..];
    }
}
