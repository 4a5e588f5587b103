namespace McuBench.Stats.Descriptive;

/// <summary>Which pairs of a row and a column of sorted values are meant.</summary>
internal enum PairRegion
{
    /// <summary>Every row with every column.</summary>
    All,

    /// <summary>Columns after the row's own place: each pair of one sample once, with no value paired with itself.</summary>
    AfterOwn,

    /// <summary>Columns from the row's mirror image on: each pair of one sample once, and each value with itself, where
    /// the rows are the negated values.</summary>
    FromMirror,
}
