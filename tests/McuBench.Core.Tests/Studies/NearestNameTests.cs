using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

public sealed class NearestNameTests
{
    private static readonly string[] Known = ["frequency", "tolerance", "core", "Marl 200", "Marl 160"];

    [Theory]
    [InlineData("frequncy", "frequency")]
    [InlineData("Frequency", "frequency")]
    [InlineData("freqeuncy", "frequency")]
    [InlineData("tolerances", "tolerance")]
    [InlineData("ocre", "core")]
    [InlineData("Marl 100", "Marl 200")]
    [InlineData("Marl 161", "Marl 160")]
    [InlineData("voltage", null)]
    [InlineData("c", null)]
    [InlineData("", null)]
    public void Of_Name_GivesTheNearestOrNone(string name, string? nearest) =>
        Assert.Equal(nearest, NearestName.Of(name, Known));

    [Fact]
    public void Of_VeryLongName_IsPassedOver()
    {
        var known = new string('n', 65);

        Assert.Null(NearestName.Of(known, [known]));
    }

    [Fact]
    public void Mend_NothingNear_ListsWhatIsKnownUnlessThatIsLong()
    {
        Assert.Equal("There are no boards.", NearestName.Mend("Tuff", [], "boards"));
        Assert.Equal("The boards are Marl, Schist.", NearestName.Mend("Tuff", ["Marl", "Schist"], "boards"));
        Assert.Equal(
            "It is none of the 13 boards.",
            NearestName.Mend("Tuff", [.. Enumerable.Range(10, 13).Select(i => $"board {i}")], "boards")
        );
    }
}
