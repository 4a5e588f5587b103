using McuBench.Core.Boards;

namespace McuBench.Core.Tests.Boards;

public sealed class BoardTests
{
    [Fact]
    public void New_OneName_OffersOneCore()
    {
        var board = new Board("Tuff");

        Assert.Equal("Tuff", board.Name);
        Assert.Equal("core", Assert.Single(board.Cores).Name);
    }

    [Fact]
    public void New_NoCore_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new Board("Tuff", []),
            "cores",
            "A board must offer at least one execution core"
        );

    [Fact]
    public void New_TwoCoresOfOneName_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new Board("Tuff", [new ExecutionCore("A"), new ExecutionCore("A")]),
            "cores",
            "Execution cores of a board must have distinct names; \"A\" stands twice."
        );

    [Fact]
    public void New_NullCores_IsRefused() =>
        Assert.Equal("cores", Assert.Throws<ArgumentNullException>(() => new Board("Tuff", null!)).ParamName);

    [Fact]
    public void New_NullAmongCores_IsRefusedWithItsPlace() =>
        Refusal.Is<ArgumentException>(
            () => new Board("Tuff", [new ExecutionCore("A"), null!]),
            "cores",
            "Execution cores must hold no null; item 1 was null."
        );

    [Theory]
    [InlineData("", "Board's name must hold a visible character; was \"\".")]
    [InlineData("  ", "Board's name must hold a visible character; was \"  \".")]
    [InlineData(" Tuff", "Board's name must not begin or end with white space; was \" Tuff\".")]
    [InlineData("Tuff\u00a0", "Board's name must not begin or end with white space; was \"Tuff\u00a0\".")]
    [InlineData("Tu\nff", "Board's name must hold no control character; U+000A in \"Tu\uFFFDff\".")]
    public void New_BadName_IsRefused(string name, string message) =>
        Refusal.Is<ArgumentException>(() => new Board(name), "Name", message);

    // Not a case of the theory above: an attribute is kept as UTF-8, which can't hold half a character.
    [Fact]
    public void New_HalfOfASurrogatePairInName_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => new Board("Tuff\ud83c"),
            "Name",
            "Board's name must hold whole characters; U+D83C is half of one, in \"Tuff\uFFFD\"."
        );

    [Fact]
    public void New_WholeSurrogatePairInName_IsTaken() =>
        Assert.Equal("Tuff \U0001F3D4", new Board("Tuff \U0001F3D4").Name);

    [Fact]
    public void New_NullName_IsRefused() =>
        Assert.Equal("Name", Assert.Throws<ArgumentNullException>(() => new Board(null!)).ParamName);

    [Fact]
    public void New_NameOf200Characters_IsTakenAnd201Refused()
    {
        Assert.Equal(200, new Board(new string('n', 200)).Name.Length);
        Refusal.Is<ArgumentException>(
            () => new Board(new string('n', 201)),
            "Name",
            "Board's name must have at most 200 characters; had 201: \"" + new string('n', 40) + "…\"."
        );
    }

    [Fact]
    public void With_BadName_IsRefusedToo()
    {
        var board = new Board("Tuff");

        Refusal.Is<ArgumentException>(() => _ = board with { Name = " " }, "Name", "Board's name must hold a visible");
        Refusal.Is<ArgumentException>(
            () => _ = board with { Description = "" },
            "Description",
            "Board's description must hold a visible"
        );
    }

    [Fact]
    public void Equals_SameCoresInOrder_IsTrue()
    {
        var one = new Board("Schist", [new ExecutionCore("A"), new ExecutionCore("B")]);
        var same = new Board("Schist", new List<ExecutionCore> { new("A"), new("B") });
        var turned = new Board("Schist", [new ExecutionCore("B"), new ExecutionCore("A")]);

        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, turned);
    }

    [Fact]
    public void Cores_ListChangedAfterwards_StayAsGiven()
    {
        var cores = new List<ExecutionCore> { new("A") };
        var board = new Board("Schist", cores);

        cores.Add(new ExecutionCore("B"));

        Assert.Single(board.Cores);
    }
}
