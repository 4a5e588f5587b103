namespace McuBench.Core.Tests.Capture;

/// <summary>A folder of its own for a test, gone afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("mcubench-");

    public string Root => folder.FullName;

    /// <summary>The names of all files and folders in it, sorted.</summary>
    public IEnumerable<string> Names =>
        folder.EnumerateFileSystemInfos().Select(entry => entry.Name).Order(StringComparer.Ordinal);

    public string PathOf(string name) => Path.Combine(Root, name);

    public string Write(string name, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(PathOf(name))!);
        File.WriteAllText(PathOf(name), text);
        return PathOf(name);
    }

    public void Dispose() => folder.Delete(recursive: true);
}
