using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

public sealed class StudyTablesTests
{
    [Fact]
    public void Trials_PathOutsideTheFolder_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => _ = new StudyTables { Trials = "../t.csv" },
            "Trials",
            "A table's path must lead into the study's folder or below, without \".\", \"..\" or empty parts. Was \"../t.csv\"."
        );

    [Fact]
    public void Readings_AbsolutePath_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => _ = new StudyTables { Readings = "/t.csv" },
            "Readings",
            "A table's path must be relative to the study's folder, without drive or scheme. Was \"/t.csv\"."
        );

    [Theory]
    [InlineData(StudyLimits.PathLength, true)]
    [InlineData(StudyLimits.PathLength + 1, false)]
    [InlineData(0, false)]
    public void Trials_Length_HasItsLimit(int length, bool isAllowed)
    {
        var path = new string('t', length);

        if (isAllowed)
        {
            Assert.Equal(path, new StudyTables { Trials = path }.Trials);
        }
        else
        {
            Refusal.Is<ArgumentException>(
                () => _ = new StudyTables { Trials = path },
                "Trials",
                "A table's path must have 1 to 260 characters."
            );
        }
    }
}
