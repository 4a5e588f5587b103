namespace McuBench.Core.Quantities;

/// <summary>Why a text was refused as a quantity.</summary>
public enum QuantityTextErrorKind
{
    /// <summary>Nothing was given, or white space alone.</summary>
    Empty,

    /// <summary>More characters than <see cref="QuantityText.MaxLength"/>.</summary>
    TooLong,

    /// <summary>The text does not begin with one plain number.</summary>
    NoNumber,

    /// <summary>A word for no number or no finite one, such as NaN or infinity.</summary>
    NotFinite,

    /// <summary>A comma stands where the decimal point belongs.</summary>
    DecimalComma,

    /// <summary>The digits are grouped by commas, spaces, points, apostrophes or underscores.</summary>
    DigitGrouping,

    /// <summary>A bare number: the unit is missing.</summary>
    NoUnit,

    /// <summary>What follows the number is no unit that the library knows.</summary>
    UnknownUnit,

    /// <summary>The unit belongs to another kind of quantity, as a charge given for a current.</summary>
    WrongQuantity,

    /// <summary>More than one unit or more than one quantity.</summary>
    TwoUnits,

    /// <summary>Something follows the unit.</summary>
    TrailingText,

    /// <summary>The number is too large to be held, or not zero and too small.</summary>
    OutOfRange,

    /// <summary>A column head is not of the form <c>name [unit]</c>.</summary>
    MalformedHead,

    /// <summary>A cell carries a unit although its column's head gives one.</summary>
    UnitInCell,
}
