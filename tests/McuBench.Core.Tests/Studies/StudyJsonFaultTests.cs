using System.Text;
using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

/// <summary>Each thing that can be wrong in a JSON study: its place, its words, and that nothing else is complained of.</summary>
public sealed class StudyJsonFaultTests
{
    [Theory]
    [InlineData(
        "\"160 MHz\"",
        "\"160\"",
        28,
        22,
        "$.setups[0].clock.frequency",
        "\"160\" has no unit; a frequency was expected. Write the unit behind the number, such as \"160 MHz\"."
    )]
    [InlineData(
        "\"160 MHz\"",
        "160",
        28,
        22,
        "$.setups[0].clock.frequency",
        "The value must be a quantity with its unit; was the number 160. Write it as a text: \"160 MHz\", say."
    )]
    [InlineData(
        "\"160 MHz\"",
        "\"0 Hz\"",
        28,
        22,
        "$.setups[0].clock.frequency",
        "Clock's frequency must be above zero; was 0 Hz."
    )]
    [InlineData(
        "\"50 ppm\"",
        "\"100 %\"",
        29,
        22,
        "$.setups[0].clock.tolerance",
        "Clock's tolerance must be at least 0 % and below 100 %; was 100 %."
    )]
    [InlineData(
        "\"412.1 ms\"",
        "\"-412.1 ms\"",
        104,
        18,
        "$.trials[0].runTime",
        "Run time must be above zero; was -412.1 ms."
    )]
    [InlineData(
        "\"412.1 ms\"",
        "\"NaN ms\"",
        104,
        18,
        "$.trials[0].runTime",
        "\"NaN ms\" is no finite number; a duration was expected. Leave out what was not measured."
    )]
    [InlineData(
        "\"412.1 ms\"",
        "NaN",
        104,
        18,
        "$.trials[0]",
        "\"NaN\" is no JSON value. Numbers are plain digits; NaN and infinity are no numbers; what is unknown is left out."
    )]
    [InlineData(
        "\"412.1 ms\"",
        "\"412,1 ms\"",
        104,
        18,
        "$.trials[0].runTime",
        "\"412,1 ms\" has a decimal comma; a decimal point was expected. Write \"412.1 ms\"."
    )]
    [InlineData(
        "\"31.02 mA\"",
        "\"31.02 mAh\"",
        119,
        18,
        "$.readings[0].current",
        "\"31.02 mAh\" is a charge; a current was expected. Write \"31.02 mA\" if that is meant, or divide by the time it took."
    )]
    [InlineData(
        "\"31.02 mA\"",
        "\"80 mA\"",
        119,
        18,
        "$.readings[0].current",
        "A reading must lie within a range of its meter (\"bench meter\" reads up to 50 mA); was 80 mA."
    )]
    [InlineData(
        "\"fullScale\": \"50 mA\"",
        "\"fullScale\": \"5 uA\"",
        79,
        25,
        "$.meters[0].ranges[0].resolution",
        "Meter's resolution must not exceed its range of 5 uA; was 10 uA."
    )]
    [InlineData(
        "\"runTime\"",
        "\"runtime\"",
        104,
        7,
        "$.trials[0].runtime",
        "The property \"runtime\" is not known here. Did you mean \"runTime\"?"
    )]
    [InlineData(
        "      \"runTime\": \"412.1 ms\",\n",
        "",
        100,
        5,
        "$.trials[0]",
        "The property \"runTime\" is missing. Add it."
    )]
    [InlineData(
        "\"order\": 1,",
        "\"weather\": 1,",
        105,
        7,
        "$.trials[0].weather",
        "The property \"weather\" is not known here. The properties are setup, workload, timer, runTime, order, session, specimen, build, connection, temperature, outputChecksum, cycleCount."
    )]
    [InlineData(
        "\"order\": 1,",
        "\"odd name\": 1,",
        105,
        7,
        "$.trials[0]['odd name']",
        "The property \"odd name\" is not known here. The properties are setup, workload, timer, runTime, order, session, specimen, build, connection, temperature, outputChecksum, cycleCount."
    )]
    [InlineData(
        "\"order\": 1,",
        "\"order\": 1, \"order\": 2,",
        105,
        19,
        "$.trials[0].order",
        "The property \"order\" stands twice. Keep one."
    )]
    [InlineData(
        "\"order\": 1,",
        "\"order\": null,",
        105,
        16,
        "$.trials[0].order",
        "The value must be a whole number; was null. Leave out what is absent or unknown."
    )]
    [InlineData(
        "\"order\": 1,",
        "\"order\": 1.5,",
        105,
        16,
        "$.trials[0].order",
        "The value must be a whole number in plain digits; was 1.5. Write it without point or exponent, at most 2147483647."
    )]
    [InlineData(
        "\"order\": 1,",
        "\"order\": 2147483648,",
        105,
        16,
        "$.trials[0].order",
        "The value must be a whole number in plain digits; was 2147483648. Write it without point or exponent, at most 2147483647."
    )]
    [InlineData(
        "\"order\": 1,",
        "\"order\": 0,",
        105,
        16,
        "$.trials[0].order",
        "Trial's order must be at least 1; was 0."
    )]
    [InlineData(
        "\"order\": 1,",
        "\"order\": \"1\",",
        105,
        16,
        "$.trials[0].order",
        "The value must be a whole number; was the text \"1\". Write it in digits, without quotation marks."
    )]
    [InlineData(
        "\"order\": 1,",
        "\"order\": [],",
        105,
        16,
        "$.trials[0].order",
        "The value must be a whole number; was a list. Write it in digits, without quotation marks."
    )]
    [InlineData(
        "\"invented\": true",
        "\"invented\": \"yes\"",
        6,
        15,
        "$.invented",
        "The value must be true or false; was the text \"yes\". Write it without quotation marks."
    )]
    [InlineData(
        "\"session\": \"morning\",\n      \"specimen\": \"no. 3\",\n      \"build\"",
        "\"session\": true,\n      \"build\"",
        106,
        18,
        "$.trials[0].session",
        "The value must be a text; was true. Write it in quotation marks."
    )]
    [InlineData(
        "\"O2\"",
        "3",
        41,
        11,
        "$.setups[0].toolchain.settings[0]",
        "The value must be a text; was the number 3. Write it in quotation marks."
    )]
    [InlineData(
        "\"O2\"",
        "\" \"",
        40,
        21,
        "$.setups[0].toolchain.settings",
        "Build setting must hold a visible character; was \" \"."
    )]
    [InlineData(
        "\"setup\": \"Schist wide 160\",\n      \"workload\"",
        "\"setup\": \"Schist wid 160\",\n      \"workload\"",
        101,
        16,
        "$.trials[0].setup",
        "\"Schist wid 160\" is no setup of this study. Did you mean \"Schist wide 160\"?"
    )]
    [InlineData(
        "\"workload\": \"echo spectrum\",\n      \"timer\"",
        "\"workload\": \"sum\",\n      \"timer\"",
        102,
        19,
        "$.trials[0].workload",
        "\"sum\" is no workload of this study. The workloads are echo spectrum."
    )]
    [InlineData(
        "\"timer\": \"ticks\"",
        "\"timer\": \"watch\"",
        103,
        16,
        "$.trials[0].timer",
        "\"watch\" is no timer of this study. The timers are ticks."
    )]
    [InlineData(
        "\"board\": \"Schist\"",
        "\"board\": \"Tuff\"",
        25,
        16,
        "$.setups[0].board",
        "\"Tuff\" is no board of this study. The boards are Schist."
    )]
    [InlineData(
        "      \"core\": \"wide\",\n",
        "",
        23,
        5,
        "$.setups[0]",
        "Board \"Schist\" offers several execution cores, and none is named. Add \"core\": one of wide, narrow."
    )]
    [InlineData(
        "\"core\": \"wide\"",
        "\"core\": \"wild\"",
        26,
        15,
        "$.setups[0].core",
        "\"wild\" is no execution core of board \"Schist\". The cores are wide, narrow."
    )]
    [InlineData(
        "\"name\": \"narrow\"",
        "\"name\": \"wide\"",
        11,
        16,
        "$.boards[0].cores",
        "Execution cores of a board must have distinct names; \"wide\" stands twice."
    )]
    [InlineData(
        "\"phase\": \"running\"",
        "\"phase\": \"runing\"",
        118,
        16,
        "$.readings[0].phase",
        "\"runing\" is not one of running, waiting, computing, idle, attachmentAlone. Did you mean \"running\"?"
    )]
    [InlineData(
        "\"kind\": \"display\"",
        "\"kind\": \"Display\"",
        47,
        19,
        "$.setups[0].attachments[0].kind",
        "\"Display\" is not one of display, radio, indicator, other. Did you mean \"display\"?"
    )]
    [InlineData(
        "\"place\": \"onBoard\"",
        "\"place\": \"upstairs\"",
        69,
        16,
        "$.timers[0].place",
        "\"upstairs\" is not one of onBoard, outside."
    )]
    [InlineData(
        "\"2026-03-01\"",
        "\"1.3.2026\"",
        88,
        17,
        "$.meters[0].zeroCheck.date",
        "\"1.3.2026\" is no date. Write year, month and day as 2026-03-31."
    )]
    [InlineData(
        "\"2026-03-01\"",
        "\"2026-02-30\"",
        88,
        17,
        "$.meters[0].zeroCheck.date",
        "\"2026-02-30\" is no date. Write year, month and day as 2026-03-31."
    )]
    [InlineData(
        "\"workload\": \"echo spectrum\",\n      \"point\": \"after",
        "\"point\": \"after",
        115,
        5,
        "$.readings[0].workload",
        "A reading in phase Running must name the workload that was executed; it names none."
    )]
    [InlineData(
        "\"version\": 1",
        "\"version\": 2",
        3,
        14,
        "$.version",
        "Version 2 of the format is not known here. This library reads version 1."
    )]
    [InlineData(
        "McuBench study",
        "recipe",
        2,
        13,
        "$.format",
        "The file is of another format, \"recipe\". A study says \"format\": \"McuBench study\"."
    )]
    [InlineData("  \"format\": \"McuBench study\",\n", "", 1, 1, "$", "The property \"format\" is missing. Add it.")]
    [InlineData(
        "\"Lake gauges\"",
        "\" \"",
        4,
        12,
        "$.title",
        "Study's title must hold a visible character; was \" \"."
    )]
    [InlineData(
        "\"Lake gauges\"",
        "\"Lake \\ud83c\"",
        4,
        12,
        "$.title",
        "The text holds half of a surrogate pair. Write the character itself, or both halves."
    )]
    [InlineData(
        "\"Lake gauges\"",
        "\"Lake\ngauges\"",
        4,
        17,
        "$",
        "A control character stands inside a text. Take it away, or close the text before it."
    )]
    [InlineData(
        "\"Lake gauges\"",
        "\"C:\\lake\"",
        4,
        16,
        "$",
        "The character after \\ makes no escape that JSON knows. Write \\\\ for a backslash."
    )]
    [InlineData(
        "\"boards\": [",
        "\"boards\": 5, \"unknown\": [",
        7,
        13,
        "$.boards",
        "The value must be a list; was the number 5. Write [ … ] around it.",
        2
    )]
    [InlineData(
        "\"panel\",\n          \"state\"",
        "\"panel\", // shown\n          \"state\"",
        48,
        28,
        "$.setups[0].attachments[0]",
        "Comments are not allowed in JSON. Say it in a description instead."
    )]
    [InlineData(
        "\"state\": \"active\"",
        "\"state\": \"active\",",
        50,
        9,
        "$.setups[0].attachments[0]",
        "Nothing follows the last comma. Take the comma away."
    )]
    [InlineData(
        "\"state\": \"active\"",
        "'state': \"active\"",
        49,
        11,
        "$.setups[0].attachments[0]",
        "Texts stand between double quotation marks. Write \" for '."
    )]
    [InlineData(
        "\"name\": \"panel\",\n          \"state\"",
        "\"name\": \"panel\"\n          \"state\"",
        49,
        11,
        "$.setups[0].attachments[0]",
        "\"state\" can't stand here. Look for a missing comma, colon or quotation mark."
    )]
    [InlineData("\n  ]\n}\n", "\n  ]\n}\n{}", 137, 1, "$", "\"{\" follows the end of the study. Take it away.")]
    [InlineData(
        "{\n  \"format\"",
        "title: x\n{\n  \"format\"",
        1,
        1,
        "$",
        "The file is not JSON. A study begins with {."
    )]
    public void Read_OneThingWrong_IsSaidWithItsPlace(
        string text,
        string changed,
        int line,
        int column,
        string path,
        string words,
        int count = 1
    )
    {
        var result = StudySample.ReadWithFaults(StudySample.With(text, changed));

        var fault = result.Faults[0];
        Assert.Equal(words, fault.Mend is null ? fault.Problem : $"{fault.Problem} {fault.Mend}");
        Assert.Equal((path, line, column), (fault.JsonPath, fault.Line, fault.Column));
        Assert.Equal($"study.json, line {line}, column {column}, {path}: {words}", fault.Message);
        Assert.Equal(count, result.FaultCount);
    }

    [Theory]
    [InlineData("[]")]
    [InlineData("5")]
    [InlineData("\"study\"")]
    public void Read_DocumentIsNoObject_IsSaid(string json)
    {
        var fault = Assert.Single(StudySample.ReadWithFaults(json).Faults);

        Assert.Equal("study.json, line 1, column 1, $: The document must be an object. Write { … }.", fault.Message);
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \r\n\t")]
    [InlineData("\uFEFF")]
    public void Read_Nothing_IsSaid(string json)
    {
        var fault = Assert.Single(StudySample.ReadWithFaults(json).Faults);

        Assert.Equal("study.json: The file is empty. Was its writing cut short?", fault.Message);
    }

    [Theory]
    [InlineData("utf-16", "UTF-16")]
    [InlineData("utf-16BE", "UTF-16")]
    [InlineData("utf-32", "UTF-32")]
    [InlineData("utf-32BE", "UTF-32")]
    public void Read_WiderEncodingWithMarkAndWithout_IsNamed(string encoding, string name)
    {
        var encoder = Encoding.GetEncoding(encoding);
        var bare = encoder.GetBytes(StudySample.Json);
        byte[] marked = [.. encoder.Preamble, .. bare];

        foreach (var bytes in new[] { bare, marked })
        {
            var fault = Assert.Single(StudySample.ReadWithFaults(bytes).Faults);
            Assert.Equal($"study.json: The file is encoded in {name}. Save it as plain text in UTF-8.", fault.Message);
        }
    }

    [Theory]
    [InlineData(new byte[] { 0x1F, 0x8B, 8, 0, 0 })]
    [InlineData(new byte[] { (byte)'P', (byte)'K', 3, 4, 0 })]
    public void Read_CompressedFile_IsNotUnpacked(byte[] bytes)
    {
        var fault = Assert.Single(StudySample.ReadWithFaults(bytes).Faults);

        Assert.Equal(
            "study.json: The file is compressed, and nothing is unpacked here. Save it as plain text in UTF-8.",
            fault.Message
        );
    }

    [Fact]
    public void Read_ByteThatIsNoUtf8_IsSaidWithItsPlace()
    {
        var latin = Encoding.Latin1.GetBytes(StudySample.With("echo sounders", "\u00E9cho sounders"));

        var fault = Assert.Single(StudySample.ReadWithFaults(latin).Faults);

        Assert.Equal("study.json, line 5, column 46: The text is not valid UTF-8. Save it as UTF-8.", fault.Message);
        Assert.Equal("byte E9", fault.Offending);
    }

    [Fact]
    public void Read_CutAnywhere_IsOneFaultAndWhatCameBeforeIsKept()
    {
        var json = StudySample.Json.TrimEnd();
        for (var length = 1; length < json.Length; length++)
        {
            var result = StudySample.ReadWithFaults(json[..length]);

            var fault = Assert.Single(result.Faults);
            Assert.Equal(1, result.FaultCount);
            Assert.Equal("The file ends before the study does.", fault.Problem);
            Assert.Equal("Was it cut short? Fetch or write it again.", fault.Mend);
        }

        var kept = StudySample.ReadWithFaults(json[..json.IndexOf("\"readings\"", StringComparison.Ordinal)]).Study!;
        Assert.Equal(StudySample.Study.Trials, kept.Trials);
        Assert.Equal(StudySample.Study.Meters, kept.Meters);
    }

    [Theory]
    [InlineData("\"title\": ", "\"\\ud800\": 1, \"title\": ", "$['\\uFFFD']")]
    [InlineData("\"order\": ", "\"\\udc00x\": 1, \"order\": ", "$.trials[0]['\\uFFFD']")]
    [InlineData("\"McuBench study\"", "\"McuBench \\ud800\"", "$.format")]
    [InlineData(
        "\"readings\": [",
        "\"trialFiles\": [{ \"path\": \"t.csv\", \"columns\": { \"\\ud800\": \"t\" } }], \"readings\": [",
        "$.trialFiles[0].columns"
    )]
    public void Read_HalfOfASurrogatePairAnywhere_IsOneFault(string text, string changed, string path) =>
        Assert.Equal(path, Assert.Single(StudySample.ReadWithFaults(StudySample.With(text, changed)).Faults).JsonPath);

    [Fact]
    public void Read_FaultBesideAHalfOfASurrogatePair_IsFound()
    {
        var json = StudySample
            .With("\"frequency\": \"160 MHz\"", "\"frequency\": \"160\"")
            .Replace("\"board\": \"Schist\"", "\"\\ud800\": 1, \"board\": \"Schist\"", StringComparison.Ordinal);

        // The name of the faulty setup is looked for past the half pair, so that nothing else is complained of.
        Assert.Single(StudySample.ReadWithFaults(json).Faults);
    }

    [Fact]
    public void Read_EscapedNamesOfProperties_AreThoseNames() =>
        Assert.Equal(
            StudySample.Study,
            StudySample.Read(
                StudySample
                    .With("\"title\"", "\"t\\u0069tle\"")
                    .Replace("\"clock\"", "\"clo\\u0063k\"", StringComparison.Ordinal)
            )
        );

    [Fact]
    public void Read_NameTwice_IsSaidAtTheSecond()
    {
        var json = StudySample.With(
            "\"timers\": [",
            "\"timers\": [{ \"name\": \"ticks\", \"resolution\": \"1 s\", \"reading\": \"rounded\" },"
        );

        var fault = Assert.Single(StudySample.ReadWithFaults(json).Faults);

        Assert.Equal("$.timers[1].name", fault.JsonPath);
        Assert.Equal("The name \"ticks\" stands twice in this list.", fault.Problem);
    }

    [Fact]
    public void Read_FaultyThing_TakesWhatRefersToItAlongWithoutFurtherComplaint()
    {
        var result = StudySample.ReadWithFaults(StudySample.With("\"160 MHz\"", "\"160\""));

        Assert.Single(result.Faults);
        Assert.Equal((1, 2), (result.TrialsLeftOut, result.ReadingsLeftOut));
        Assert.Empty(result.Study!.Setups);
        Assert.Empty(result.Study.Trials);
        Assert.Equal(StudySample.Study.Boards, result.Study.Boards);
    }

    [Fact]
    public void Read_SeveralFaults_AreAllListedAndTheFirstIsTheMessage()
    {
        var json = StudySample
            .With("\"160 MHz\"", "\"160\"")
            .Replace("\"1 us\"", "\"1 uA\"", StringComparison.Ordinal)
            .Replace("\"order\": 1", "\"order\": 1.5", StringComparison.Ordinal);

        var thrown = Assert.Throws<StudyFormatException>(() => StudySample.Read(json));

        // Faults of shape come first: they are found while the document is taken in.
        Assert.Equal(
            ["$.trials[0].order", "$.setups[0].clock.frequency", "$.timers[0].resolution"],
            thrown.Faults.Select(fault => fault.JsonPath)
        );
        Assert.Equal(3, thrown.FaultCount);
        Assert.Equal($"{thrown.Faults[0].Message} (The first of 3 faults.)", thrown.Message);
        Assert.Equal("study.json", thrown.SourceName);
        Assert.Equal((105, 16), (thrown.Line, thrown.Column));
        Assert.Equal("$.trials[0].order", thrown.JsonPath);
        Assert.Equal("1.5", thrown.Offending);
        Assert.Equal("Write it without point or exponent, at most 2147483647.", thrown.Mend);
        Assert.Null(thrown.ColumnHead);
    }

    [Fact]
    public void Read_OffendingText_IsShortenedAndEscaped()
    {
        var json = StudySample.With(
            "\"morning\",\n      \"specimen\": \"no. 3\",\n      \"build\"",
            "\"a\\u001b[2Jb\",\n      \"build\""
        );

        var fault = StudySample.ReadWithFaults(json).Faults.First(one => one.JsonPath == "$.trials[0].session");

        Assert.Equal("Session must hold no control character; U+001B in \"a\uFFFD[2Jb\".", fault.Problem);
    }
}
