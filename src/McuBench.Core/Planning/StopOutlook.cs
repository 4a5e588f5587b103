namespace McuBench.Core.Planning;

/// <summary>Whether more trials are to be taken.</summary>
public enum StopOutlook
{
    /// <summary>The wanted width isn't reached yet.</summary>
    GoOn,

    /// <summary>It was reached, and the trials that confirm it are still to be taken.</summary>
    Confirm,

    /// <summary>It was reached and confirmed.</summary>
    Enough,

    /// <summary>As many trials as were allowed were taken, and it wasn't reached.</summary>
    AtMaximum,

    /// <summary>What more trials don't reduce is by itself wider: the timer, its tolerance.</summary>
    OutOfReach,
}
