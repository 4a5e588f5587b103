namespace McuBench.Core.Studies;

/// <summary>How much a study file may hold. What passes a limit is refused with a fault that names it.</summary>
public static class StudyLimits
{
    /// <summary>The most bytes in a study file and in each table beside it: 64 MiB.</summary>
    public const int FileBytes = 64 * 1024 * 1024;

    /// <summary>The deepest nesting of objects and lists in JSON. The format itself needs 6.</summary>
    public const int NestingDepth = 32;

    /// <summary>The most characters in a text or property name in JSON.</summary>
    public const int TextLength = 4096;

    /// <summary>The most characters in a number in JSON.</summary>
    public const int NumberLength = 40;

    /// <summary>The most tables of trials, and of readings, that a study may refer to.</summary>
    public const int Tables = 100;

    /// <summary>The most characters in the path of a table.</summary>
    public const int PathLength = 260;

    /// <summary>The most rows in a table.</summary>
    public const int Rows = 1_000_000;

    /// <summary>The most columns in a table.</summary>
    public const int Columns = 200;

    /// <summary>The most characters in a row of a table, line breaks inside quotes included.</summary>
    public const int RowLength = 65_536;

    /// <summary>The most characters in a field of a table.</summary>
    public const int FieldLength = 4096;

    /// <summary>The most faults that a result or an exception lists; the rest are counted.</summary>
    public const int FaultsListed = 100;
}
