using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;

namespace McuBench.Core.Conclusions;

/// <summary>Lists all in which two setups and what was taken with them differ, as far as it was noted.</summary>
internal static class SetupDifferences
{
    private const string NotKnown = "not known";
    private const string None = "none";
    private const double LeastKelvinsToMention = 2;

    public static IEnumerable<SetupDifference> Between(SetupSummary first, SetupSummary second) =>
        OfSetups(first.Setup, second.Setup)
            .Concat(OfTrials(first, second))
            .Concat(OfReadings(first.Supply, second.Supply));

    private static IEnumerable<SetupDifference> OfSetups(Setup first, Setup second)
    {
        if (first.Board != second.Board)
        {
            yield return new(SetupAspect.Board, "board", first.Board.Name, second.Board.Name);
        }

        if (first.Board != second.Board ? first.Core.Name != second.Core.Name : first.Core != second.Core)
        {
            yield return new(SetupAspect.ExecutionCore, "execution core", first.Core.Name, second.Core.Name);
        }

        if (Si.Hertz(first.Clock.Nominal) != Si.Hertz(second.Clock.Nominal))
        {
            yield return new(
                SetupAspect.ClockFrequency,
                "clock",
                QuantityText.Format(first.Clock.Nominal),
                QuantityText.Format(second.Clock.Nominal)
            );
        }

        foreach (
            var difference in OfSupply(first.Supply, second.Supply)
                .Concat(OfToolchains(first.Toolchain, second.Toolchain))
                .Concat(OfAttachments(first, second))
        )
        {
            yield return difference;
        }
    }

    private static IEnumerable<SetupDifference> OfSupply(BoardSupply? first, BoardSupply? second)
    {
        var voltage = Differ(SetupAspect.SupplyVoltage, "supply voltage", Voltage(first), Voltage(second));
        var input = Differ(
            SetupAspect.SupplyInput,
            "supply input",
            first?.Input ?? NotKnown,
            second?.Input ?? NotKnown
        );
        var elsewhere = Differ(
            SetupAspect.FedElsewhere,
            "fed through another path as well",
            YesOrNo(first?.FedElsewhereToo),
            YesOrNo(second?.FedElsewhereToo)
        );
        return new[] { voltage, input, elsewhere }.OfType<SetupDifference>();

        static string Voltage(BoardSupply? supply) => supply is null ? NotKnown : QuantityText.Format(supply.Voltage);
        static string YesOrNo(bool? value) =>
            value switch
            {
                true => "yes",
                false => "no",
                null => NotKnown,
            };
    }

    private static IEnumerable<SetupDifference> OfToolchains(Toolchain? first, Toolchain? second)
    {
        var name = Differ(SetupAspect.Toolchain, "toolchain", Name(first), Name(second));
        var settings = Differ(SetupAspect.BuildSettings, "build settings", Settings(first), Settings(second));
        return new[] { name, settings }.OfType<SetupDifference>();

        static string Name(Toolchain? toolchain) =>
            toolchain is null ? NotKnown
            : toolchain.Version is null ? toolchain.Name
            : $"{toolchain.Name} {toolchain.Version}";
        static string Settings(Toolchain? toolchain) =>
            toolchain is null ? NotKnown
            : toolchain.Settings.Count == 0 ? None
            : string.Join(", ", toolchain.Settings);
    }

    private static IEnumerable<SetupDifference> OfAttachments(Setup first, Setup second)
    {
        // What only one has, stands in the other as "none"; the first's order, then what only the second has.
        var ofSecond = second.Attachments.ToDictionary(a => a.Name, StringComparer.Ordinal);
        var ofFirst = first.Attachments.Select(a => a.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var attachment in first.Attachments)
        {
            var what = Words(attachment);
            if (!ofSecond.TryGetValue(attachment.Name, out var other))
            {
                yield return new(SetupAspect.Attachment, what, State(attachment), None);
            }
            else if (attachment.Kind != other.Kind)
            {
                yield return new(SetupAspect.Attachment, $"\"{attachment.Name}\"", what, Words(other));
            }
            else if (attachment.State != other.State)
            {
                yield return new(SetupAspect.AttachmentState, what, State(attachment), State(other));
            }
        }

        foreach (var attachment in second.Attachments.Where(a => !ofFirst.Contains(a.Name)))
        {
            yield return new(SetupAspect.Attachment, Words(attachment), None, State(attachment));
        }

        static string Words(Attachment attachment) => $"{Lower(attachment.Kind.ToString())} \"{attachment.Name}\"";
        static string State(Attachment attachment) => Lower(attachment.State.ToString());
    }

    private static IEnumerable<SetupDifference> OfTrials(SetupSummary first, SetupSummary second)
    {
        var (ofFirst, ofSecond) = (first.Workings.Facts, second.Workings.Facts);
        var timer = Differ(SetupAspect.Timer, "timer", first.Series.Timer.Name, second.Series.Timer.Name);
        var session = Differ(SetupAspect.Session, "session", ofFirst.Sessions, ofSecond.Sessions);
        var connection = Differ(SetupAspect.Connection, "cable and port", ofFirst.Connections, ofSecond.Connections);
        foreach (var difference in new[] { timer, session, connection }.OfType<SetupDifference>())
        {
            yield return difference;
        }

        if (
            ofFirst.MeanKelvins is { } kelvins
            && ofSecond.MeanKelvins is { } other
            && Math.Abs(kelvins - other) >= LeastKelvinsToMention
        )
        {
            yield return new(
                SetupAspect.Temperature,
                "mean temperature",
                QuantityText.Format(Si.Temperature(kelvins)),
                QuantityText.Format(Si.Temperature(other))
            );
        }
    }

    private static IEnumerable<SetupDifference> OfReadings(SupplySummary? first, SupplySummary? second)
    {
        if (first is null || second is null)
        {
            return [];
        }

        var meter = Differ(SetupAspect.Meter, "meter and range", Meters(first), Meters(second));
        var point = Differ(SetupAspect.MeasuringPoint, "measuring point", Points(first), Points(second));
        return new[] { meter, point }.OfType<SetupDifference>();

        static string Meters(SupplySummary supply) =>
            Said.List([
                .. supply.Readings.Select(MeterAndRange).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
            ]);
        static string Points(SupplySummary supply) =>
            supply.Readings[0].Point == MeasuringPoint.BeforeRegulator
                ? "before the regulator"
                : "behind the regulator";
    }

    public static string MeterAndRange(SupplyReading reading) =>
        $"\"{reading.Meter.Name}\", {QuantityText.Format(reading.MeterRange.FullScale)} range";

    private static SetupDifference? Differ(SetupAspect aspect, string what, string first, string second) =>
        string.Equals(first, second, StringComparison.Ordinal) ? null : new(aspect, what, first, second);

    private static string Lower(string name) => name.ToLowerInvariant();
}
