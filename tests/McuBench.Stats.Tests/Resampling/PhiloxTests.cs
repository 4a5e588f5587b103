using System.Globalization;
using System.Text.Json;
using McuBench.Stats.Resampling;

namespace McuBench.Stats.Tests.Resampling;

public sealed class PhiloxTests
{
    // The three known answers of the generator's authors (salmon-2011), which NumPy gives too.
    [Theory]
    [InlineData(
        "0000000000000000 0000000000000000 0000000000000000 0000000000000000",
        "0000000000000000 0000000000000000",
        "16554d9eca36314c db20fe9d672d0fdc d7e772cee186176b 7e68b68aec7ba23b"
    )]
    [InlineData(
        "ffffffffffffffff ffffffffffffffff ffffffffffffffff ffffffffffffffff",
        "ffffffffffffffff ffffffffffffffff",
        "87b092c3013fe90b 438c3c67be8d0224 9cc7d7c69cd777b6 a09caebf594f0ba0"
    )]
    [InlineData(
        "243f6a8885a308d3 13198a2e03707344 a4093822299f31d0 082efa98ec4e6c89",
        "452821e638d01377 be5466cf34e90c6c",
        "a528f45403e61d95 38c72dbd566e9788 a5a1610e72fd18b5 57bd43b5e52b7fe6"
    )]
    public void Scramble_CounterAndKeyOfAKnownAnswer_IsThatAnswer(string counter, string key, string answer)
    {
        ulong[] words = Words(counter.Split(' '));
        ulong[] keys = Words(key.Split(' '));

        Philox.Scramble(words, keys[0], keys[1]);

        Assert.Equal(Words(answer.Split(' ')), words);
    }

    [Fact]
    public void Bits_FourStreams_AreTheWordsOfNumPy()
    {
        string path = Path.Combine(AppContext.BaseDirectory, "reference", "philox-numpy.json");
        using var document = JsonDocument.Parse(File.ReadAllBytes(path));
        foreach (JsonElement stream in document.RootElement.GetProperty("streams").EnumerateArray())
        {
            var random = RandomStream.Of(Whole(stream, "seed"), Whole(stream, "stream"));
            ulong[] expected = Words(stream.GetProperty("words").EnumerateArray().Select(word => word.GetString()!));

            Assert.Equal(expected, expected.Select(_ => random.Bits()));
        }
    }

    private static ulong Whole(JsonElement stream, string name) =>
        ulong.Parse(stream.GetProperty(name).GetString()!, CultureInfo.InvariantCulture);

    private static ulong[] Words(IEnumerable<string> texts) =>
        [.. texts.Select(text => ulong.Parse(text, NumberStyles.HexNumber, CultureInfo.InvariantCulture))];
}
