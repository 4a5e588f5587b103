namespace CompareBoards;

/// <summary>What the program tells whoever started it.</summary>
public static class ExitCode
{
    /// <summary>All is done.</summary>
    public const int Done = 0;

    /// <summary>Something went wrong that the program did not foresee, or the report could not be written.</summary>
    public const int Unexpected = 1;

    /// <summary>The study or the command line can't be taken as it is; nothing was written.</summary>
    public const int BadInput = 2;

    /// <summary>Stopped by the user: 128 and the number of the signal, as shells have it.</summary>
    public const int Cancelled = 130;
}
