using McuBench.Core.Studies;
using McuBench.Core.Supply;

namespace McuBench.Core.Tests.Studies;

public sealed class ReadingCsvTests
{
    private const string Heads = "setup,meter,phase,current [mA],workload\n";
    private const string Start = "Schist wide 160,bench meter,";

    [Fact]
    public void Read_EveryColumn_GivesEveryValue()
    {
        var readings = Read(
            """
            setup,meter,phase,current [mA],workload,point,board voltage [mV],range [A],attachment,session,specimen
            Schist wide 160,bench meter,running,31.02,echo spectrum,afterRegulator,3310,0.05,,morning,no. 3
            Schist wide 160,bench meter,attachmentAlone,4,,,,,panel,,

            """
        );

        Assert.Equal(StudySample.Study.Readings, readings);
    }

    [Theory]
    [InlineData(
        "running,31.02,",
        "column 5 \"workload\": A reading in phase Running must name the workload that was executed; it names none."
    )]
    [InlineData(
        "idle,31.02,echo spectrum",
        "column 5 \"workload\": A reading in phase Idle must name no workload; it names \"echo spectrum\"."
    )]
    [InlineData(
        "sleeping,31.02,",
        "column 3 \"phase\": \"sleeping\" is not one of running, waiting, computing, idle, attachmentAlone."
    )]
    [InlineData(",31.02,", "column 3 \"phase\": The field is empty. Each row must have it.")]
    [InlineData("idle,-1,", "column 4 \"current [mA]\": Current read must not be negative; was -1 mA.")]
    [InlineData(
        "idle,80,",
        "column 4 \"current [mA]\": A reading must lie within a range of its meter (\"bench meter\" reads up to 50 mA); was 80 mA."
    )]
    [InlineData(
        "idle,1 mAh,",
        "column 4 \"current [mA]\": \"1 mAh\" has \"mAh\" behind the number; a bare number was expected, as the column's head gives mA. Write \"1\" if it is in mA, or convert it."
    )]
    public void Read_BadRow_IsSaidWithItsPlace(string row, string words)
    {
        var result = ReadingCsv.ReadWithFaults(
            new StringReader($"{Heads}{Start}{row}\n{Start}idle,1,\n"),
            "readings.csv",
            StudySample.Study
        );

        Assert.Equal($"readings.csv, line 2, {words}", Assert.Single(result.Faults).Message);
        Assert.Equal(SupplyPhase.Idle, Assert.Single(result.Rows).Phase);
    }

    [Fact]
    public void Read_ChargeInHead_IsRefused()
    {
        var thrown = Assert.Throws<StudyFormatException>(() =>
            Read(Heads.Replace("mA", "mAh", StringComparison.Ordinal))
        );

        Assert.Equal(
            "readings.csv, line 1, column 4 \"current [mAh]\": Head \"current [mAh]\" has mAh, the unit of a charge; that of a current was expected. Write \"current [mA]\".",
            thrown.Message
        );
    }

    [Fact]
    public void Read_ConstantPointAndVoltage_HoldForEveryRow()
    {
        var columns = new ColumnMap<ReadingColumn>()
            .WithConstant(ReadingColumn.Point, "afterRegulator")
            .WithConstant(ReadingColumn.BoardVoltage, "3.3 V");

        var readings = ReadingCsv.Read(
            new StringReader($"{Heads}{Start}idle,1,\n{Start}idle,2,\n"),
            "readings.csv",
            StudySample.Study,
            columns
        );

        Assert.All(
            readings,
            reading =>
                Assert.Equal((MeasuringPoint.AfterRegulator, 3.3), (reading.Point, reading.BoardVoltage!.Value.Volts))
        );
        Assert.Equal(2, readings.Count);
    }

    [Fact]
    public void Write_Readings_GivesColumnsInUse()
    {
        using var text = new StringWriter();

        ReadingCsv.Write(text, StudySample.Study.Readings);

        Assert.Equal(
            """
            setup,meter,phase,current [A],workload,point,board voltage [V],range [A],attachment,session,specimen
            Schist wide 160,bench meter,running,0.03102,echo spectrum,afterRegulator,3.31,0.05,,morning,no. 3
            Schist wide 160,bench meter,attachmentAlone,0.004,,beforeRegulator,,,panel,,

            """,
            text.ToString()
        );
    }

    private static IReadOnlyList<SupplyReading> Read(string csv) =>
        ReadingCsv.Read(new StringReader(csv), "readings.csv", StudySample.Study);
}
