namespace CompareBoards.Tests;

/// <summary>One run of the program inside the test: what it said, and a folder of its own that goes when the test ends.</summary>
internal sealed class ProgramRun : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("compare-boards-");

    public string Output { get; private set; } = "";

    public string Error { get; private set; } = "";

    public string ReportFolder => Path.Combine(folder.FullName, "report");

    public string PathOf(string name) => Path.Combine(folder.FullName, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(PathOf(name), text);
        return PathOf(name);
    }

    /// <summary>Runs the program with the report going to <see cref="ReportFolder"/>.</summary>
    public int Run(params IEnumerable<string> args) => Run(CancellationToken.None, args);

    public int Run(CancellationToken cancellationToken, params IEnumerable<string> args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = Application.Run([.. args, "--out", ReportFolder], output, error, null, cancellationToken);
        Output = output.ToString();
        Error = error.ToString();
        return code;
    }

    public void Dispose() => folder.Delete(recursive: true);
}
