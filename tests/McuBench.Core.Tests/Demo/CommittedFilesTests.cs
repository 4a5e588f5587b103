using DemoStudy;
using McuBench.Core.Capture;

namespace McuBench.Core.Tests.Demo;

public sealed class CommittedFilesTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("demo-study-").FullName;

    public static TheoryData<string> Names => [.. DemoFiles.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void WriteTo_CommittedSeed_GivesTheCommittedBytes(string name)
    {
        DemoFiles.WriteTo(folder);

        Assert.Equal(
            File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", name)),
            File.ReadAllBytes(Path.Combine(folder, name))
        );
    }

    [Fact]
    public void Read_CommittedFiles_GivesTheStudyThatWasMade()
    {
        var read = StudyFile.Read(Path.Combine(AppContext.BaseDirectory, "demo", DemoFiles.Names[0]));

        Assert.Equal(DemoData.Make(), read);
        Assert.True(read.IsInvented);
        Assert.Contains("invented", read.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_AnotherSeed_GivesAnotherStudy() =>
        Assert.NotEqual(DemoData.Make(), DemoData.Make(DemoData.CommittedSeed + 1));

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
