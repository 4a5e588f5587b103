namespace McuBench.Core.Studies;

/// <summary>Which lists of a study are written as tables beside the JSON file, and under which names.</summary>
/// <remarks>Immutable; equal when all properties are equal.</remarks>
public sealed record StudyTables
{
    /// <summary>The path of the table of trials, relative to the study's file; absent where the trials stand in the
    /// JSON itself.</summary>
    /// <exception cref="ArgumentException">The path is not that of a file in the study's folder or below it.</exception>
    public string? Trials
    {
        get;
        init => field = Checked(value, nameof(Trials));
    }

    /// <summary>The path of the table of supply readings, relative to the study's file; absent where they stand in the
    /// JSON itself.</summary>
    /// <exception cref="ArgumentException">The path is not that of a file in the study's folder or below it.</exception>
    public string? Readings
    {
        get;
        init => field = Checked(value, nameof(Readings));
    }

    private static string? Checked(string? path, string parameter)
    {
        if (path is not null && TablePath.Refusal(path) is { } refusal)
        {
            throw new ArgumentException($"{refusal} Was {Quantities.Excerpt.Quoted(path)}.", parameter);
        }

        return path;
    }
}
