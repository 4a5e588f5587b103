namespace McuBench.Core.Quantities;

/// <summary>How a quantity is written.</summary>
public enum TextForm
{
    /// <summary>ASCII alone: "-12 us", "+/-", "kohm", "degC"; for files and consoles of any kind.</summary>
    Ascii,

    /// <summary>With the signs of print but the keyboard's spaces and minus: "-12 µs", "±", "kΩ", "°C"; for sentences
    /// that are searched, wrapped and shown on terminals.</summary>
    Plain,

    /// <summary>As print has it: "−12 µs", "±", "kΩ", "°C", with U+2212 for minus and U+202F, the narrow no-break
    /// space, before the unit.</summary>
    Typographic,
}
