namespace McuBench.Core.Capture;

/// <summary>What became of a line that a board sent.</summary>
public enum BoardLineKind
{
    /// <summary>It matches the pattern, and its figures were read.</summary>
    Reading,

    /// <summary>It doesn't match: a boot message, a banner, noise.</summary>
    Other,

    /// <summary>It matches, but a figure in it is none: a time of zero, a unit that isn't one, more ticks than 64 bits.</summary>
    Unusable,

    /// <summary>It is longer than lines may be; its beginning is kept, the rest is counted.</summary>
    Overlong,

    /// <summary>The text ended in the middle of it. It isn't read, since "2.4" may have been going to be "2.41".</summary>
    Unfinished,

    /// <summary>Matching it took too long.</summary>
    TimedOut,
}
