using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace McuBench.Core.Studies;

/// <summary>Says which column of a table holds which property, and what holds for every row where there is no column.</summary>
/// <typeparam name="TColumn"><see cref="TrialColumn"/> or <see cref="ReadingColumn"/>.</typeparam>
/// <remarks>
/// Heads are compared without their unit and without regard to case: "run time" stands for a column headed
/// "Run time [ms]" as for one headed "run time [s]". A property that the map does not name has the head that its
/// enumeration value states. Immutable; safe to use from many threads.
/// </remarks>
public sealed class ColumnMap<TColumn>
    where TColumn : struct, Enum
{
    private readonly ImmutableDictionary<TColumn, string> heads;
    private readonly ImmutableDictionary<TColumn, string> constants;

    /// <summary>Makes the map in which every property has the head that its enumeration value states.</summary>
    public ColumnMap()
        : this(ImmutableDictionary<TColumn, string>.Empty, ImmutableDictionary<TColumn, string>.Empty) { }

    private ColumnMap(ImmutableDictionary<TColumn, string> heads, ImmutableDictionary<TColumn, string> constants)
    {
        this.heads = heads;
        this.constants = constants;
    }

    /// <summary>The heads given with <see cref="WithHead"/>.</summary>
    public IReadOnlyDictionary<TColumn, string> Heads => heads;

    /// <summary>The values given with <see cref="WithConstant"/>.</summary>
    public IReadOnlyDictionary<TColumn, string> Constants => constants;

    /// <summary>The same map, in which a property's column has this head. A table without it is then at fault, even
    /// where the property may be absent.</summary>
    /// <param name="column">The property.</param>
    /// <param name="head">The head, with or without its unit.</param>
    /// <exception cref="ArgumentException">The head is blank or too long, or the property is not defined.</exception>
    public ColumnMap<TColumn> WithHead(TColumn column, string head) =>
        new(
            heads.SetItem(
                Require.Defined(column, "Column", nameof(column)),
                Require.Name(head, "Column's head", nameof(head))
            ),
            constants.Remove(column)
        );

    /// <summary>The same map, in which a property has one value in every row and no column. A quantity has its unit:
    /// "5 V".</summary>
    /// <param name="column">The property.</param>
    /// <param name="value">The value, as a field of the table would have it.</param>
    /// <exception cref="ArgumentException">The value is blank or too long, or the property is not defined.</exception>
    public ColumnMap<TColumn> WithConstant(TColumn column, string value) =>
        new(
            heads.Remove(column),
            constants.SetItem(
                Require.Defined(column, "Column", nameof(column)),
                Require.Name(value, "Constant value", nameof(value))
            )
        );

    /// <summary>The head that stands for a property.</summary>
    internal string HeadOf(TColumn column) => heads.TryGetValue(column, out var head) ? head : DefaultHead(column);

    /// <summary>The enumeration value's name as words: "run time".</summary>
    internal static string DefaultHead(TColumn column)
    {
        var name = column.ToString();
        var words = new StringBuilder(name.Length + 2);
        foreach (var c in name)
        {
            if (char.IsAsciiLetterUpper(c) && words.Length > 0)
            {
                words.Append(' ');
            }

            words.Append(char.ToLower(c, CultureInfo.InvariantCulture));
        }

        return words.ToString();
    }
}
