namespace McuBench.Stats.Coverage;

/// <summary>The part of a text file between two marks.</summary>
public static class MarkedPart
{
    private const string Begin = "<!-- coverage: begin -->";
    private const string End = "<!-- coverage: end -->";

    /// <summary>Puts new text between the marks and leaves the rest as it is.</summary>
    /// <param name="path">The file.</param>
    /// <param name="text">The new text.</param>
    /// <exception cref="InvalidDataException">The file has not both marks in their order.</exception>
    public static void Replace(string path, string text)
    {
        string all = File.ReadAllText(path);
        int begin = all.IndexOf(Begin, StringComparison.Ordinal);
        int end = all.IndexOf(End, StringComparison.Ordinal);
        if (begin < 0 || end < begin)
        {
            throw new InvalidDataException($"{path} must have the marks {Begin} and {End}.");
        }

        File.WriteAllText(path, $"{all[..(begin + Begin.Length)]}\n{text.Trim('\n')}\n{all[end..]}");
    }
}
