using McuBench.Core.Studies;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Studies;

public sealed class TrialCsvTests
{
    private const string Heads = "setup,workload,timer,run time [ms]\n";
    private const string Start = "Schist wide 160,echo spectrum,ticks,";

    private static Trial Plain =>
        new(
            StudySample.Study.Setups[0],
            StudySample.Study.Workloads[0],
            StudySample.Study.Timers[0],
            Duration.FromSeconds(0.4121)
        );

    [Fact]
    public void Read_EveryColumn_GivesEveryValue()
    {
        var trials = Read(
            """
            Output Checksum,temperature [°C],connection,build,specimen,session,order,Run Time [ms],timer,workload,setup
            9AF3,23,"short cable, port 2",b17,no. 3,morning,1,412.1,ticks,echo spectrum,Schist wide 160

            """
        );

        Assert.Equal(StudySample.Study.Trials, trials);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Read_LineEndsAndBlankLinesAndMark_AreTaken(string end)
    {
        var csv = $"\uFEFF\n{Heads}\n  \n{Start}412.1\n\n{Start} 412.1 ".Replace("\n", end, StringComparison.Ordinal);

        Assert.Equal([Plain, Plain], Read(csv));
    }

    [Fact]
    public void Read_HeadsAlone_GivesNoTrial() => Assert.Empty(Read(Heads));

    [Fact]
    public void Read_QuotedFields_AreUnquoted()
    {
        var trials = Read(
            "setup,\"workload\",timer,\"run time [ms]\",session,\"build\"\n"
                + "\"Schist wide 160\",\"echo spectrum\",ticks,\"412.1\",\"a \"\"b\"\", c\",\n"
        );

        Assert.Equal([Plain with { Session = "a \"b\", c" }], trials);
    }

    [Fact]
    public void Read_LineBreakInsideQuotes_BelongsToTheFieldAndLinesAreCounted()
    {
        var csv = $"note,{Heads}\"first\nsecond\r\nthird\",{Start}412.1\nx,{Start}fast\n";

        var result = TrialCsv.ReadWithFaults(
            new StringReader(csv),
            "trials.csv",
            StudySample.Study,
            options: new CsvOptions { IgnoreOtherColumns = true }
        );

        Assert.Equal([Plain], result.Rows);
        Assert.Equal(5, Assert.Single(result.Faults).Line);
        Assert.Equal(1, result.RowsLeftOut);
    }

    [Theory]
    [InlineData(';')]
    [InlineData('\t')]
    [InlineData('|')]
    public void Read_OtherDelimiter_SplitsByIt(char delimiter)
    {
        var csv = $"{Heads}{Start}412.1\n".Replace(',', delimiter);

        Assert.Equal([Plain], Read(csv, options: new CsvOptions { Delimiter = delimiter }));
    }

    [Fact]
    public void Read_HashComments_AreSkippedWithTheirQuotationMarks()
    {
        var csv = $"# a 5\" display\n{Heads}# one, two\n{Start}412.1\n#\n\"#1\"{Start[15..]}412.1\n";

        var result = TrialCsv.ReadWithFaults(
            new StringReader(csv),
            "trials.csv",
            StudySample.Study,
            options: new CsvOptions { HashComments = true }
        );

        Assert.Equal([Plain], result.Rows);
        Assert.Equal(
            "trials.csv, line 6, column 1 \"setup\": \"#1\" is no setup of this study. The setups are Schist wide 160.",
            Assert.Single(result.Faults).Message
        );
    }

    [Fact]
    public void Read_ApostropheBeforeAFormulaSign_IsTakenOff()
    {
        var trials = Read($"session,build,connection,{Heads}'=1+1,'tis,''@x,{Start}412.1\n");

        Assert.Equal([Plain with { Session = "=1+1", Build = "'tis", Connection = "'@x" }], trials);
    }

    [Fact]
    public void Read_HeadWithoutUnit_TakesEachFieldsOwn()
    {
        var trials = Read($"setup,workload,timer,run time\n{Start}412.1 ms\n{Start}0.4121 s\n");

        Assert.Equal([Plain, Plain], trials);
    }

    [Theory]
    [InlineData("run time [s]", "0.4121")]
    [InlineData("run time[us]", "412100")]
    [InlineData("RUN TIME [ \u00B5s ]", "4.121e5")]
    [InlineData("run time [\u03BCs]", "+412100")]
    [InlineData("run time [ns]", "412100000")]
    public void Read_UnitInHead_IsApplied(string head, string field) =>
        Assert.Equal([Plain], Read($"setup,workload,timer,{head}\n{Start}{field}\n"));

    [Fact]
    public void Read_ColumnMap_SaysWhichHeadAndWhichConstant()
    {
        var columns = new ColumnMap<TrialColumn>()
            .WithHead(TrialColumn.Setup, "unit under test")
            .WithHead(TrialColumn.RunTime, "t")
            .WithConstant(TrialColumn.Workload, "echo spectrum")
            .WithConstant(TrialColumn.Timer, "ticks")
            .WithConstant(TrialColumn.Temperature, "296.15 K");

        var trials = Read("Unit Under Test,T [ms]\nSchist wide 160,412.1\n", columns);

        Assert.Equal([Plain with { Temperature = Temperature.FromKelvins(296.15) }], trials);
    }

    [Theory]
    [InlineData(
        "fast",
        "\"fast\" does not begin with one plain number; a duration was expected. Write one bare number, in the ms of the column's head."
    )]
    [InlineData("-1", "Run time must be above zero; was -1 ms.")]
    [InlineData("0", "Run time must be above zero; was 0 s.")]
    [InlineData("NaN", "\"NaN\" is no finite number; a duration was expected. Leave out what was not measured.")]
    [InlineData(
        "1e999",
        "\"1e999\" cannot be held; a duration of size 0 or 4.9e-324 to 1.8e+308 in the SI unit was expected. Check the exponent."
    )]
    [InlineData("\"412,1\"", "\"412,1\" has a decimal comma; a decimal point was expected. Write \"412.1\".")]
    [InlineData(
        "412.1 ms",
        "\"412.1 ms\" has \"ms\" behind the number; a bare number was expected, as the column's head gives ms. Write \"412.1\" if it is in ms, or convert it."
    )]
    [InlineData("", "The field is empty. Each row must have it.")]
    [InlineData("\"\"", "The field is empty. Each row must have it.")]
    public void Read_BadRunTime_IsSaidWithRowColumnAndHead(string field, string words)
    {
        var result = Faults($"{Heads}{Start}412.1\n{Start}{field}\n{Start}412.1\n");

        var fault = Assert.Single(result.Faults);
        Assert.Equal($"trials.csv, line 3, column 4 \"run time [ms]\": {words}", fault.Message);
        Assert.Equal(
            ("trials.csv", 3, 4, "run time [ms]"),
            (fault.SourceName, fault.Line, fault.Column, fault.ColumnHead)
        );
        Assert.Null(fault.JsonPath);
        Assert.Equal([Plain, Plain], result.Rows);
        Assert.Equal(1, result.RowsLeftOut);
    }

    [Theory]
    [InlineData(
        "Schist,echo spectrum,ticks,1",
        "column 1 \"setup\": \"Schist\" is no setup of this study. The setups are Schist wide 160."
    )]
    [InlineData(
        "Schist wide 160,echo spectrm,ticks,1",
        "column 2 \"workload\": \"echo spectrm\" is no workload of this study. Did you mean \"echo spectrum\"?"
    )]
    [InlineData(
        "Schist wide 160,echo spectrum,watch,1",
        "column 3 \"timer\": \"watch\" is no timer of this study. The timers are ticks."
    )]
    public void Read_UnknownName_IsSaid(string row, string words)
    {
        var fault = Assert.Single(Faults($"{Heads}{row}\n").Faults);

        Assert.Equal($"trials.csv, line 2, {words}", fault.Message);
    }

    [Theory]
    [InlineData(
        "412,1",
        "The row has 5 fields where the heads are 4. Write decimals with a point, and quote fields that hold the delimiter."
    )]
    [InlineData(
        "1,",
        "The row has 5 fields where the heads are 4. Write decimals with a point, and quote fields that hold the delimiter."
    )]
    public void Read_TooManyFields_IsSaid(string field, string words)
    {
        var fault = Assert.Single(Faults($"{Heads}{Start}{field}\n").Faults);

        Assert.Equal($"trials.csv, line 2: {words}", fault.Message);
    }

    [Fact]
    public void Read_TooFewFields_IsSaid()
    {
        var fault = Assert.Single(Faults($"{Heads}{Start.TrimEnd(',')}\n").Faults);

        Assert.Equal(
            "trials.csv, line 2: The row has 3 fields where the heads are 4. Fill in what is missing; a field may be empty.",
            fault.Message
        );
    }

    [Theory]
    [InlineData("1.5", "The value must be a whole number in plain digits; was \"1.5\".")]
    [InlineData("1,5", "The value must be a whole number in plain digits; was \"1,5\".")]
    [InlineData("3000000000", "The value must be a whole number in plain digits; was \"3000000000\".")]
    [InlineData("0", "Trial's order must be at least 1; was 0.")]
    public void Read_BadOrder_IsSaid(string field, string words)
    {
        var fault = Assert.Single(Faults($"order,{Heads}\"{field}\",{Start}1\n").Faults);

        Assert.Equal($"trials.csv, line 2, column 1 \"order\": {words}", fault.Message);
    }

    [Theory]
    [InlineData("\"Schist wide 160", "column 1 \"setup\": A quotation mark is never closed. Close it.")]
    [InlineData(
        "Schist \"wide\" 160",
        "column 1 \"setup\": Quotation marks stand inside the field \"Schist \"wide\" 160\". Put the whole field in quotation marks and double those inside."
    )]
    [InlineData(
        "\"Schist\" wide 160",
        "column 1 \"setup\": Quotation marks stand inside the field \"\"Schist\" wide 160\". Put the whole field in quotation marks and double those inside."
    )]
    public void Read_StrayQuotationMark_IsSaid(string field, string words)
    {
        var fault = Assert.Single(Faults($"{Heads}{field},echo spectrum,ticks,1\n").Faults);

        Assert.Equal($"trials.csv, line 2, {words}", fault.Message);
    }

    [Fact]
    public void Read_NoUnitAnywhere_IsSaidOnceAColumn()
    {
        var result = Faults($"setup,workload,timer,run time\n{Start}1\n{Start}2\n{Start}3 ms\n");

        Assert.Equal(
            "trials.csv, line 2, column 4 \"run time\": \"1\" has no unit, and neither has the head. Put it in the head: \"run time [ms]\", say.",
            Assert.Single(result.Faults).Message
        );
        Assert.Equal((1, 2, 1), (result.Rows.Count, result.RowsLeftOut, result.FaultCount));
    }

    [Fact]
    public void Read_BadConstant_IsSaidOnce()
    {
        var columns = new ColumnMap<TrialColumn>().WithConstant(TrialColumn.Temperature, "296.15");

        var result = Faults($"{Heads}{Start}1\n{Start}2\n", columns);

        Assert.Equal(
            "trials.csv, line 2 \"temperature\": \"296.15\" has no unit; a temperature was expected. Write the unit behind the number, such as \"296.15 degC\".",
            Assert.Single(result.Faults).Message
        );
        Assert.Equal((0, 2, 1), (result.Rows.Count, result.RowsLeftOut, result.FaultCount));
    }

    [Theory]
    [InlineData("", "The table is empty. Its first line must be the heads.")]
    [InlineData("\n \n", "The table is empty. Its first line must be the heads.")]
    public void Read_NoHeads_IsSaid(string csv, string words) =>
        Assert.Equal($"trials.csv: {words}", Assert.Single(Faults(csv).Faults).Message);

    [Theory]
    [InlineData(
        "setup,workload,timer,run time [mA]",
        ", column 4 \"run time [mA]\": Head \"run time [mA]\" has mA, the unit of a current; that of a duration was expected. Write \"run time [ms]\"."
    )]
    [InlineData(
        "setup,workload,timer,run time [ticks]",
        ", column 4 \"run time [ticks]\": Head \"run time [ticks]\" has the unknown unit \"ticks\"; that of a duration was expected. Give the unit as one of s, ms, us, ns, min, h, d."
    )]
    [InlineData(
        "setup,workload,run time [ms]",
        ": There is no column \"timer\"; the heads are \"setup\", \"workload\", \"run time [ms]\". Add it, name its head in the column map, or give a constant."
    )]
    [InlineData(
        "setup,workload,timer,runtime [ms]",
        ": There is no column \"run time\"; the heads are \"setup\", \"workload\", \"timer\", \"runtime [ms]\". If \"runtime\" is meant, name it in the column map."
    )]
    [InlineData(
        "setup;workload;timer;run time [ms]",
        ", column 1: The first head is \"setup;workload;timer;run time [ms]\". If fields are separated by \";\", say so as the delimiter."
    )]
    [InlineData(
        "# heads",
        ", column 1: The first head is \"# heads\". If that is a comment, say that lines beginning with # are comments."
    )]
    [InlineData(
        "run time [s],setup,workload,timer,run time [ms]",
        ", column 5 \"run time [ms]\": The column is there twice, here and as column 1 \"run time [s]\". Keep one, or name the one that is meant in the column map."
    )]
    [InlineData(
        "note,setup,workload,timer,run time [ms]",
        ", column 1 \"note\": The column stands for no property. Map it, take it out, or have other columns ignored."
    )]
    [InlineData(
        "temprature [K],setup,workload,timer,run time [ms]",
        ", column 1 \"temprature [K]\": The column stands for no property. Did you mean \"temperature\"?"
    )]
    public void Read_BadHeads_AreSaid(string heads, string words)
    {
        var fault = Assert.Single(Faults($"{heads}\n{Start}1\n").Faults);

        Assert.Equal($"trials.csv, line 1{words}", fault.Message);
    }

    [Fact]
    public void Read_TwoColumnsOfOneName_AreToldApartByTheirUnits()
    {
        var columns = new ColumnMap<TrialColumn>().WithHead(TrialColumn.RunTime, "run time [s]");

        var trials = Read(
            $"{Heads.TrimEnd()},run time [s]\n{Start}1,0.4121\n",
            columns,
            new CsvOptions { IgnoreOtherColumns = true }
        );

        Assert.Equal([Plain], trials);
    }

    [Fact]
    public void Read_MappedHeadThatIsNotThere_IsSaidEvenWhereThePropertyMayBeAbsent()
    {
        var columns = new ColumnMap<TrialColumn>().WithHead(TrialColumn.Order, "no");

        var fault = Assert.Single(Faults($"{Heads}{Start}1\n", columns).Faults);

        Assert.Equal(
            "There is no column \"no\"; the heads are \"setup\", \"workload\", \"timer\", \"run time [ms]\".",
            fault.Problem
        );
    }

    [Fact]
    public void Read_ColumnWhereAConstantIsGiven_IsSaid()
    {
        var columns = new ColumnMap<TrialColumn>().WithConstant(TrialColumn.Timer, "ticks");

        var fault = Assert.Single(Faults($"{Heads}{Start}1\n", columns).Faults);

        Assert.Equal(
            "trials.csv, line 1, column 3 \"timer\": The column map gives one value for all rows in place of this column. Take one of the two away.",
            fault.Message
        );
    }

    [Fact]
    public void Read_AnyFault_Throws()
    {
        var thrown = Assert.Throws<StudyFormatException>(() => Read($"{Heads}{Start}fast\n{Start}faster\n"));

        Assert.Equal(2, thrown.FaultCount);
        Assert.Equal("run time [ms]", thrown.ColumnHead);
        Assert.Equal((2, 4), (thrown.Line, thrown.Column));
        Assert.EndsWith(" (The first of 2 faults.)", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Text_StaysOpen()
    {
        using var text = new StringReader(Heads);

        TrialCsv.Read(text, "trials.csv", StudySample.Study);

        Assert.Equal(-1, text.Read());
    }

    [Fact]
    public void Write_Trials_GivesColumnsInUse()
    {
        using var text = new StringWriter();

        TrialCsv.Write(
            text,
            [
                StudySample.Study.Trials[0],
                Plain with
                {
                    RunTime = Duration.FromMicroseconds(1),
                    Session = "=2+3, \"x\"",
                },
            ]
        );

        Assert.Equal(
            """"
            setup,workload,timer,run time [s],order,session,specimen,build,connection,temperature [K],output checksum
            Schist wide 160,echo spectrum,ticks,0.4121,1,morning,no. 3,b17,"short cable, port 2",296.15,9AF3
            Schist wide 160,echo spectrum,ticks,1E-06,,"'=2+3, ""x""",,,,,

            """",
            text.ToString()
        );
    }

    [Fact]
    public void Write_NoTrials_GivesTheHeads()
    {
        using var text = new StringWriter();

        TrialCsv.Write(text, [], new CsvOptions { Delimiter = ';' });

        Assert.Equal("setup;workload;timer;run time [s]\n", text.ToString());
    }

    private static IReadOnlyList<Trial> Read(
        string csv,
        ColumnMap<TrialColumn>? columns = null,
        CsvOptions? options = null
    ) => TrialCsv.Read(new StringReader(csv), "trials.csv", StudySample.Study, columns, options);

    private static CsvReadResult<Trial> Faults(string csv, ColumnMap<TrialColumn>? columns = null) =>
        TrialCsv.ReadWithFaults(new StringReader(csv), "trials.csv", StudySample.Study, columns);
}
