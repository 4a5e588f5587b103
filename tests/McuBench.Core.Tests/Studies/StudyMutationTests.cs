using System.Text;
using FsCheck;
using FsCheck.Xunit;
using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

/// <summary>Whatever is done to a file, reading it gives a study or faults, each on one line, and no other exception.</summary>
public sealed class StudyMutationTests
{
    private const string Table = "setup,workload,timer,run time [ms],order,temperature [\u00B0C],session\n";

    private static readonly byte[] Json = Encoding.UTF8.GetBytes(
        StudySample.With("\"readings\": [", "\"trialFiles\": [{ \"path\": \"a.csv\" }],\n  \"readings\": [")
    );

    private static readonly byte[] Csv = Encoding.UTF8.GetBytes(
        Table
            + "Schist wide 160,echo spectrum,ticks,412.1,1,23.5,\"mor\"\"ning\"\n"
            + "# Schist wide 160\n\n"
            + "Schist wide 160,\"echo spectrum\",ticks,4.121e2,2,,evening\r\n"
    );

    // What a reader may stumble over, put in anywhere.
    private static readonly byte[][] Splinters =
    [
        "\""u8.ToArray(),
        "\\"u8.ToArray(),
        "\\ud800"u8.ToArray(),
        "{"u8.ToArray(),
        "}"u8.ToArray(),
        "["u8.ToArray(),
        "]"u8.ToArray(),
        ","u8.ToArray(),
        ":"u8.ToArray(),
        "null"u8.ToArray(),
        "true"u8.ToArray(),
        "-1e999"u8.ToArray(),
        "NaN"u8.ToArray(),
        "\n"u8.ToArray(),
        "\r"u8.ToArray(),
        "#"u8.ToArray(),
        ";"u8.ToArray(),
        "\0"u8.ToArray(),
        [0xFF],
        [0xC3],
        [0xEF, 0xBB, 0xBF],
        "\u2028"u8.ToArray(),
        "[mA]"u8.ToArray(),
        "/*"u8.ToArray(),
        "'"u8.ToArray(),
        Encoding.UTF8.GetBytes(new string('[', 40)),
        Encoding.UTF8.GetBytes(new string('9', 50)),
        Encoding.UTF8.GetBytes(new string('x', 5000)),
    ];

    [Property(MaxTest = 1500)]
    public void Json_Mutated_GivesAStudyOrFaults(DoNotSize<int> seed)
    {
        var mutated = Mutated(Json, new Random(seed.Item));

        var result = StudySample.ReadWithFaults(mutated, _ => new MemoryStream(Csv));

        AssertSound(result.Faults, result.FaultCount);
        Assert.True(result.FaultCount > 0 || result.Study is not null);
        AssertThrowsTheSame(result.FaultCount, () => result.OrThrow());
    }

    [Property(MaxTest = 1500)]
    public void Table_Mutated_GivesRowsOrFaults(DoNotSize<int> seed)
    {
        var mutated = Mutated(Csv, new Random(seed.Item));

        var result = StudySample.ReadWithFaults(Json, _ => new MemoryStream(mutated));

        AssertSound(result.Faults, result.FaultCount);
        Assert.NotNull(result.Study);
    }

    [Property(MaxTest = 1500)]
    public void TrialCsv_MutatedText_GivesRowsOrFaults(DoNotSize<int> seed)
    {
        var random = new Random(seed.Item);
        var mutated = Encoding.UTF8.GetString(Mutated(Csv, random));
        var options = new CsvOptions { HashComments = true, IgnoreOtherColumns = random.Next(2) == 0 };

        var result = TrialCsv.ReadWithFaults(
            new StringReader(mutated),
            "trials.csv",
            StudySample.Study,
            options: options
        );

        AssertSound(result.Faults, result.FaultCount);
        Assert.True(result.RowsLeftOut >= 0);
        AssertThrowsTheSame(result.FaultCount, () => result.OrThrow());
    }

    private static void AssertSound(IReadOnlyList<StudyFault> faults, int count)
    {
        Assert.True(count >= faults.Count);
        Assert.All(
            faults,
            fault =>
            {
                Assert.DoesNotContain(fault.Message, char.IsControl);
                Assert.InRange(fault.Message.Length, 20, 1500);
                Assert.True(fault.Line is null or > 0);
                Assert.True(fault.Column is null or > 0);
            }
        );
    }

    private static void AssertThrowsTheSame(int count, Action read)
    {
        var thrown = Record.Exception(read);
        Assert.Equal(count, thrown is null ? 0 : Assert.IsType<StudyFormatException>(thrown).FaultCount);
    }

    private static byte[] Mutated(byte[] original, Random random)
    {
        var bytes = original.ToList();
        for (var i = random.Next(1, 5); i > 0; i--)
        {
            var at = random.Next(bytes.Count + 1);
            var length = Math.Min(random.Next(1, 40), bytes.Count - at);
            switch (random.Next(6))
            {
                case 0:
                    bytes.RemoveRange(at, length);
                    break;
                case 1:
                    bytes.InsertRange(at, Splinters[random.Next(Splinters.Length)]);
                    break;
                case 2:
                    bytes.InsertRange(random.Next(bytes.Count + 1), bytes.GetRange(at, length));
                    break;
                case 3 when length > 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 4 when length > 0:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 5 when random.Next(4) == 0:
                    bytes.RemoveRange(at, bytes.Count - at);
                    break;
            }
        }

        return [.. bytes];
    }
}
