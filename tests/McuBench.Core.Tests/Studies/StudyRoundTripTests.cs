using FsCheck;
using FsCheck.Xunit;
using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

public sealed class StudyRoundTripTests
{
    [Property]
    public void Json_AnyStudy_ReadsBackEqual(DoNotSize<int> seed)
    {
        var study = RandomStudy.Of(seed.Item);

        var read = StudySample.Read(StudySample.Write(study));

        Assert.Equal(study, read);
    }

    [Property]
    public void Json_AnyStudy_IsWrittenTheSameAgain(DoNotSize<int> seed)
    {
        var written = StudySample.Write(RandomStudy.Of(seed.Item));

        Assert.Equal(written, StudySample.Write(StudySample.Read(written)));
    }

    [Property]
    public void TrialCsv_AnyTrials_ReadBackEqual(DoNotSize<int> seed, bool comments)
    {
        var study = RandomStudy.Of(seed.Item);
        var options = Options(seed.Item, comments);
        using var text = new StringWriter();

        TrialCsv.Write(text, study.Trials, options);
        var read = TrialCsv.Read(new StringReader(text.ToString()), "trials.csv", study, options: options);

        Assert.Equal(study.Trials, read);
    }

    [Property]
    public void ReadingCsv_AnyReadings_ReadBackEqual(DoNotSize<int> seed, bool comments)
    {
        var study = RandomStudy.Of(seed.Item);
        var options = Options(seed.Item, comments);
        using var text = new StringWriter();

        ReadingCsv.Write(text, study.Readings, options);
        var read = ReadingCsv.Read(new StringReader(text.ToString()), "readings.csv", study, options: options);

        Assert.Equal(study.Readings, read);
    }

    private static CsvOptions Options(int seed, bool comments) =>
        new() { Delimiter = ",;\t|"[(seed & int.MaxValue) % 4], HashComments = comments };
}
