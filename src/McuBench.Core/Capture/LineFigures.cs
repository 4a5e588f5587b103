using System.Globalization;
using System.Text.RegularExpressions;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Capture;

/// <summary>Turns what a pattern's groups caught into figures, or says which of them is none.</summary>
internal static class LineFigures
{
    /// <summary>The figures, or the problem with one of them.</summary>
    public static (LineReading? Reading, string? Problem) Of(Match match, LinePattern pattern)
    {
        if (!Whole(match, "ticks", ulong.TryParse, out ulong? ticks))
        {
            return Refused("Ticks", match, "ticks", "a whole number of at most 64 bits");
        }

        if (!Whole(match, "items", long.TryParse, out long? items) || items < 1)
        {
            return Refused("Work items", match, "items", "a whole number above zero");
        }

        if (!Whole(match, "sequence", long.TryParse, out long? sequence))
        {
            return Refused("Sequence", match, "sequence", "a whole number");
        }

        if (!Time(match, pattern, ticks, out var time, out var problem))
        {
            return (null, problem);
        }

        var checksum = Text(match, "checksum");
        return checksum?.Length > Require.LongestName
            ? Refused("Checksum", match, "checksum", $"at most {Require.LongestName} characters long")
            : (
                new LineReading
                {
                    RunTime = time,
                    Ticks = ticks,
                    Items = items,
                    Sequence = sequence,
                    Marker = Text(match, "marker"),
                    Checksum = checksum,
                },
                null
            );
    }

    private delegate bool Parser<T>(string text, NumberStyles style, IFormatProvider provider, out T value);

    private static bool Whole<T>(Match match, string group, Parser<T> parse, out T? value)
        where T : struct
    {
        value = null;
        if (Text(match, group) is not { } text)
        {
            return true;
        }

        var isWhole = parse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var parsed);
        value = parsed;
        return isWhole;
    }

    private static bool Time(Match match, LinePattern pattern, ulong? ticks, out Duration? time, out string? problem)
    {
        time = null;
        problem = null;
        if (Text(match, "time") is { } number)
        {
            var unit = Text(match, "unit") ?? pattern.Unit;
            var given = unit is null ? number : $"{number} {unit}";
            if (!QuantityText.TryParseDuration(given, out var read, out var error))
            {
                problem = error.Message;
                return false;
            }

            time = read;
        }
        else if (ticks is { } count && pattern.TickRate is { } rate)
        {
            time = Si.Duration(count / Si.Hertz(rate));
        }

        if (time is { } some && Si.Seconds(some) <= 0)
        {
            problem = "Run time must be above zero; was 0 s. The run is too short for the timer: do more work items.";
            return false;
        }

        return true;
    }

    private static string? Text(Match match, string group) =>
        match.Groups[group] is { Success: true, Length: > 0 } caught ? caught.Value.Trim() : null;

    private static (LineReading?, string) Refused(string what, Match match, string group, string rule) =>
        (null, $"{what} must be {rule}; was {Excerpt.Quoted(match.Groups[group].Value)}.");
}
