using CompareBoards.Charts;

namespace CompareBoards.Tests.Charts;

public sealed class FileNamesTests
{
    [Theory]
    [InlineData("echo spectrum", "echo-spectrum")]
    [InlineData("  FFT, 1024 points (Q15) ", "fft-1024-points-q15")]
    [InlineData("../../etc/passwd", "etc-passwd")]
    [InlineData("µ°", "unnamed")]
    [InlineData("a\\b:c*", "a-b-c")]
    public void Of_AnyName_IsFitForAFile(string name, string expected) => Assert.Equal(expected, FileNames.Of(name));

    [Fact]
    public void Of_LongName_IsCut() => Assert.Equal(60, FileNames.Of(new string('a', 200)).Length);
}
