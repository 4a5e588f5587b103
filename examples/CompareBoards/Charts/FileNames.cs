namespace CompareBoards.Charts;

/// <summary>File names made of names that may hold anything.</summary>
public static class FileNames
{
    /// <summary>The letters and digits of a name in lower case, everything else as single hyphens.</summary>
    public static string Of(string name)
    {
        var parts = new string([.. name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]);
        var joined = string.Join('-', parts.Split('-', StringSplitOptions.RemoveEmptyEntries));
        return joined.Length switch
        {
            0 => "unnamed",
            > 60 => joined[..60].TrimEnd('-'),
            _ => joined,
        };
    }
}
