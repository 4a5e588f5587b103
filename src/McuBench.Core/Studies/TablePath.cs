namespace McuBench.Core.Studies;

/// <summary>The rule for paths of tables: in the study's folder or below, on any system that reads the study.</summary>
internal static class TablePath
{
    // What some systems take for a device whatever the folder, with any extension.
    private static readonly HashSet<string> Devices = new(StringComparer.OrdinalIgnoreCase)
    {
        "CON",
        "PRN",
        "AUX",
        "NUL",
        "CONIN$",
        "CONOUT$",
        "COM1",
        "COM2",
        "COM3",
        "COM4",
        "COM5",
        "COM6",
        "COM7",
        "COM8",
        "COM9",
        "LPT1",
        "LPT2",
        "LPT3",
        "LPT4",
        "LPT5",
        "LPT6",
        "LPT7",
        "LPT8",
        "LPT9",
    };

    /// <summary>Why a path is refused, as a sentence; null where it is not.</summary>
    public static string? Refusal(string path)
    {
        if (path.Length is 0 or > StudyLimits.PathLength)
        {
            return FormattableString.Invariant($"A table's path must have 1 to {StudyLimits.PathLength} characters.");
        }

        if (path[0] == '/' || path.Contains(':', StringComparison.Ordinal))
        {
            return "A table's path must be relative to the study's folder, without drive or scheme.";
        }

        if (path.Any(c => char.IsControl(c) || c is '\\' or '<' or '>' or '"' or '|' or '?' or '*'))
        {
            return "A table's path must separate folders by / and hold none of \\ < > \" | ? * or control characters.";
        }

        foreach (var part in path.Split('/'))
        {
            if (part is "" or "." or "..")
            {
                return "A table's path must lead into the study's folder or below, without \".\", \"..\" or empty parts.";
            }

            if (part[^1] is '.' or ' ' || part[0] == ' ' || Devices.Contains(part.Split('.')[0]))
            {
                return "A table's path must have parts that are names of files on any system: no device names, no spaces at their ends, no point at their end.";
            }
        }

        return null;
    }
}
