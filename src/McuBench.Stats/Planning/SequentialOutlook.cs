namespace McuBench.Stats.Planning;

/// <summary>Whether values are still to be taken.</summary>
public enum SequentialOutlook
{
    /// <summary>The wanted width isn't reached yet.</summary>
    GoOn,

    /// <summary>The width was reached, and the confirming values are still to be taken.</summary>
    Confirm,

    /// <summary>The width was reached and confirmed.</summary>
    Enough,

    /// <summary>As many values as were allowed were taken, and the width wasn't reached.</summary>
    AtMaximum,
}
