namespace McuBench.Stats.Resampling;

/// <summary>The bijection of the generator Philox4x64-10 (salmon-2011, section 3.3): four words out of a counter and
/// a key.</summary>
internal static class Philox
{
    private const int Rounds = 10;

    // Multipliers and key increments of the published generator (salmon-2011, table 2, and section 3.3).
    private const ulong Multiplier0 = 0xD2E7470EE14C6C93;
    private const ulong Multiplier1 = 0xCA5A826395121157;
    private const ulong Increment0 = 0x9E3779B97F4A7C15;
    private const ulong Increment1 = 0xBB67AE8584CAA73B;

    /// <summary>Turns the four words of a counter into four random words, in place.</summary>
    internal static void Scramble(Span<ulong> words, ulong key0, ulong key1)
    {
        (ulong w0, ulong w1, ulong w2, ulong w3) = (words[0], words[1], words[2], words[3]);
        for (int round = 0; round < Rounds; round++)
        {
            ulong high0 = Math.BigMul(Multiplier0, w0, out ulong low0);
            ulong high1 = Math.BigMul(Multiplier1, w2, out ulong low1);
            (w0, w1, w2, w3) = (high1 ^ w1 ^ key0, low1, high0 ^ w3 ^ key1, low0);
            key0 += Increment0;
            key1 += Increment1;
        }

        (words[0], words[1], words[2], words[3]) = (w0, w1, w2, w3);
    }
}
