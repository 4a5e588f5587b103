namespace BenchRig;

/// <summary>What the program's exit code says.</summary>
public static class ExitCode
{
    /// <summary>All is known as closely as wanted, or as closely as it can be.</summary>
    public const int Done = 0;

    /// <summary>Something went wrong that was not foreseen.</summary>
    public const int Unexpected = 1;

    /// <summary>The command line, the rig's file or the study can't be taken as it is.</summary>
    public const int BadInput = 2;

    /// <summary>A board didn't answer, or its port was gone and didn't come back.</summary>
    public const int NoBoard = 3;

    /// <summary>The journal can't be written: disk full, folder read-only, or another rig holds it.</summary>
    public const int NoJournal = 4;

    /// <summary>A trial brought up something to look at first.</summary>
    public const int Paused = 5;

    /// <summary>Stopped by the user.</summary>
    public const int Cancelled = 130;
}
