using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

public sealed class CsvOptionsTests
{
    [Theory]
    [InlineData(':', "\":\"")]
    [InlineData('\n', "\"\\u000A\"")]
    [InlineData('"', "\"\"\"")]
    public void Delimiter_Another_IsRefused(char delimiter, string shown) =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = CsvOptions.Default with { Delimiter = delimiter },
            "Delimiter",
            $"Delimiter must be a comma, a semicolon, a tab or a vertical bar; was {shown}."
        );

    [Fact]
    public void Default_IsCommasAndNothingElse() =>
        Assert.Equal(
            (',', false, false),
            (CsvOptions.Default.Delimiter, CsvOptions.Default.HashComments, CsvOptions.Default.IgnoreOtherColumns)
        );
}
