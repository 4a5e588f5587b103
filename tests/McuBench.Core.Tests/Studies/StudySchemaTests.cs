using System.Text.Json;
using FsCheck;
using FsCheck.Xunit;
using Json.Schema;
using McuBench.Core.Studies;
using McuBench.Core.Studies.Json;

namespace McuBench.Core.Tests.Studies;

public sealed class StudySchemaTests
{
    private static readonly string Text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "study.schema.json"));

    private static readonly JsonSchema Schema = JsonSchema.FromText(Text);

    [Fact]
    public void Schema_Sample_IsAccepted() => Assert.True(Accepts(StudySample.Json));

    [Property]
    public void Schema_WhateverIsWritten_IsAccepted(DoNotSize<int> seed)
    {
        var study = RandomStudy.Of(seed.Item);

        Assert.True(Accepts(StudySample.Write(study)));
        Assert.True(Accepts(StudySample.Write(study, new StudyTables { Trials = "a/t.csv", Readings = "r.csv" })));
    }

    [Theory]
    [InlineData("\"160 MHz\"", "\"160\"")]
    [InlineData("\"160 MHz\"", "160")]
    [InlineData("\"160 MHz\"", "\"160 mA\"")]
    [InlineData("\"160 MHz\"", "\"160 mHz\"")]
    [InlineData("\"31.02 mA\"", "\"31.02 mAh\"")]
    [InlineData("\"412.1 ms\"", "\"412,1 ms\"")]
    [InlineData("\"412.1 ms\"", "\"NaN ms\"")]
    [InlineData("\"1 us\"", "\"1 us 2\"")]
    [InlineData("\"runTime\"", "\"runtime\"")]
    [InlineData("      \"runTime\": \"412.1 ms\",\n", "")]
    [InlineData("\"order\": 1,", "\"order\": 0,")]
    [InlineData("\"order\": 1,", "\"order\": 1.5,")]
    [InlineData("\"order\": 1,", "\"order\": null,")]
    [InlineData("\"order\": 1,", "\"order\": 1, \"weather\": \"rain\",")]
    [InlineData("\"phase\": \"running\"", "\"phase\": \"Running\"")]
    [InlineData("\"workload\": \"echo spectrum\",\n      \"point\": \"after", "\"point\": \"after")]
    [InlineData("\"attachment\": \"panel\"", "\"attachment\": \"panel\", \"workload\": \"echo spectrum\"")]
    [InlineData("\"Lake gauges\"", "\"\"")]
    [InlineData("\"Lake gauges\"", "\" Lake\"")]
    [InlineData("\"Lake gauges\"", "\"Lake\\u0007\"")]
    [InlineData("\"version\": 1", "\"version\": 2")]
    [InlineData("\"McuBench study\"", "\"recipe\"")]
    [InlineData("\"2026-03-01\"", "\"1.3.2026\"")]
    [InlineData("\"timers\": [", "\"ticks\": [")]
    public void Schema_BadStudy_IsRefusedAsTheReaderDoes(string text, string changed)
    {
        var json = StudySample.With(text, changed);

        Assert.False(Accepts(json));
        Assert.NotEmpty(StudySample.ReadWithFaults(json).Faults);
    }

    [Theory]
    [InlineData("trials.csv", true)]
    [InlineData("a/b c/..d.csv", true)]
    [InlineData("\u00B5/t", true)]
    [InlineData("../t.csv", false)]
    [InlineData("a/../t.csv", false)]
    [InlineData("a/..", false)]
    [InlineData("./t.csv", false)]
    [InlineData("a//t.csv", false)]
    [InlineData("a/", false)]
    [InlineData("/t.csv", false)]
    [InlineData("c:t.csv", false)]
    [InlineData("a\\\\t.csv", false)]
    [InlineData("", false)]
    public void Schema_TablePath_IsJudgedAsTheReaderDoes(string path, bool isAllowed)
    {
        var json = StudySample.With(
            "\"readings\": [",
            $"\"trialFiles\": [{{ \"path\": \"{path}\" }}], \"readings\": ["
        );

        var result = StudySample.ReadWithFaults(
            json,
            _ => new MemoryStream("setup,workload,timer,run time [s]\n"u8.ToArray())
        );

        Assert.Equal(isAllowed, Accepts(json));
        Assert.Equal(isAllowed, result.FaultCount == 0);
    }

    [Theory]
    [InlineData("\"columns\": { \"runTime\": \"t\" }", true)]
    [InlineData("\"columns\": { \"runtime\": \"t\" }", false)]
    [InlineData("\"columns\": { \"runTime\": 5 }", false)]
    [InlineData("\"constants\": { \"current\": \"t\" }", false)]
    [InlineData("\"delimiter\": \"\\t\"", true)]
    [InlineData("\"delimiter\": \":\"", false)]
    [InlineData("\"delimiter\": \"\"", false)]
    [InlineData("\"hashComments\": 1", false)]
    public void Schema_TableOptions_AreJudgedAsTheReaderDoes(string options, bool isAllowed)
    {
        var json = StudySample.With(
            "\"readings\": [",
            $"\"trialFiles\": [{{ \"path\": \"t.csv\", {options} }}], \"readings\": ["
        );

        var result = StudySample.ReadWithFaults(
            json,
            _ => new MemoryStream("setup\tworkload\ttimer\tt [s]\n"u8.ToArray())
        );

        Assert.Equal(isAllowed, Accepts(json));
        Assert.Equal(isAllowed, result.Faults.All(fault => fault.JsonPath is null));
    }

    [Fact]
    public void Schema_PropertiesAndWhatIsRequired_AreTheReaders()
    {
        using var schema = JsonDocument.Parse(Text);
        var compared = 0;

        Compare(TransferShape.Document, schema.RootElement);

        Assert.Equal(18, compared);

        void Compare(TransferShape shape, JsonElement part)
        {
            part = Followed(schema.RootElement, part);
            if (shape.Kind == TransferKind.List)
            {
                Assert.Equal("array", part.GetProperty("type").GetString());
                Compare(shape.Item!, part.GetProperty("items"));
            }

            if (shape.Kind != TransferKind.Object)
            {
                return;
            }

            compared++;
            Assert.False(part.GetProperty("additionalProperties").GetBoolean());
            Assert.Equal(shape.PropertyNames, part.GetProperty("properties").EnumerateObject().Select(p => p.Name));
            Assert.Equal(
                shape.Properties.Where(property => property.IsRequired).Select(property => property.Name),
                part.GetProperty("required").EnumerateArray().Select(name => name.GetString())
            );
            foreach (var property in shape.Properties)
            {
                Compare(property.Shape, part.GetProperty("properties").GetProperty(property.Name));
            }
        }
    }

    [Fact]
    public void Schema_ColumnNames_AreTheReaders()
    {
        using var schema = JsonDocument.Parse(Text);

        Assert.Equal(EnumWord<TrialColumn>.All, Names("trialColumns"));
        Assert.Equal(EnumWord<ReadingColumn>.All, Names("readingColumns"));

        IEnumerable<string?> Names(string definition) =>
            schema
                .RootElement.GetProperty("$defs")
                .GetProperty(definition)
                .GetProperty("propertyNames")
                .GetProperty("enum")
                .EnumerateArray()
                .Select(name => name.GetString());
    }

    private static JsonElement Followed(JsonElement root, JsonElement part) =>
        part.TryGetProperty("$ref", out var reference)
            ? root.GetProperty("$defs").GetProperty(reference.GetString()!["#/$defs/".Length..])
            : part;

    private static bool Accepts(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
