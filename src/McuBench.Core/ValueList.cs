using System.Collections;
using System.Collections.Immutable;

namespace McuBench.Core;

/// <summary>A list copied in once, equal to another when the items are equal in order. Records hold this behind
/// <see cref="IReadOnlyList{T}"/>, since over a plain array or <see cref="ImmutableArray{T}"/> they would compare by
/// reference.</summary>
internal sealed class ValueList<T> : IReadOnlyList<T>, IEquatable<ValueList<T>>
{
    private readonly ImmutableArray<T> items;

    private ValueList(ImmutableArray<T> items) => this.items = items;

    public static ValueList<T> Empty { get; } = new([]);

    public int Count => items.Length;

    public T this[int index] => items[index];

    /// <summary>Copies a list, unless it is one of these already.</summary>
    public static ValueList<T> Of(IEnumerable<T> values, string what, string parameter)
    {
        ArgumentNullException.ThrowIfNull(values, parameter);
        if (values is ValueList<T> already)
        {
            return already;
        }

        var copy = values.ToImmutableArray();
        for (var i = 0; i < copy.Length; i++)
        {
            if (copy[i] is null)
            {
                throw new ArgumentException($"{what} must hold no null; item {i} was null.", parameter);
            }
        }

        return new ValueList<T>(copy);
    }

    public bool Equals(ValueList<T>? other) =>
        other is not null && (ReferenceEquals(this, other) || items.AsSpan().SequenceEqual(other.items.AsSpan()));

    public override bool Equals(object? obj) => Equals(obj as ValueList<T>);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
