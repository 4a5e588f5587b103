using McuBench.Core.Boards;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Json;

/// <summary>Makes boards, setups and workloads of their transfer records; null after a fault.</summary>
internal static class PartAssembler
{
    public static Board? Board(StudyTransfer.Board part, ObjectFaults here)
    {
        if (part.Cores is null)
        {
            return here.Make(["name", "description"], () => new Board(part.Name) { Description = part.Description });
        }

        var cores = ObjectFaults.All(
            part.Cores,
            (core, i) =>
                here.At("cores", i)
                    .Make(
                        ["name", "description"],
                        () => new ExecutionCore(core.Name) { Description = core.Description }
                    )
        );
        return cores is null
            ? null
            : here.Make(
                ["name", "description", "cores"],
                () => new Board(part.Name, cores) { Description = part.Description }
            );
    }

    public static Setup? Setup(StudyTransfer.Setup part, StudyNames names, ObjectFaults here)
    {
        var board = names.Boards.Find(part.Board, "board", here);
        var core = board is null ? null : CoreOf(board, part.Core, here);
        var clock = Clock(part.Clock, here.At("clock"));
        BoardSupply? supply = null;
        Toolchain? toolchain = null;
        var sound =
            (part.Supply is null || (supply = Supply(part.Supply, here.At("supply"))) is not null)
            & (part.Toolchain is null || (toolchain = Toolchain(part.Toolchain, here.At("toolchain"))) is not null);
        var attachments = ObjectFaults.All(
            part.Attachments ?? [],
            (one, i) => Attachment(one, here.At("attachments", i))
        );
        if (!sound || board is null || core is null || clock is null || attachments is null)
        {
            return null;
        }

        return here.Make(
            ["name", "core", "attachments"],
            () =>
                new Setup(part.Name, board, core, clock)
                {
                    Supply = supply,
                    Toolchain = toolchain,
                    Attachments = attachments,
                }
        );
    }

    public static Workload? Workload(StudyTransfer.Workload part, ObjectFaults here)
    {
        if (!here.Optional("loadPeriod", part.LoadPeriod, QuantityKind.Duration, out var period))
        {
            return null;
        }

        return here.Make(
            ["name", "workItemsPerRun", "itemName", "description", "outputChecksum", "loadPeriod"],
            () =>
            {
                var workload = new Workload(part.Name, part.WorkItemsPerRun)
                {
                    Description = part.Description,
                    OutputChecksum = part.OutputChecksum,
                    IsEmpty = part.Empty == true,
                    LoadPeriod = period is { } seconds ? Si.Duration(seconds) : null,
                };
                return part.ItemName is null ? workload : workload with { ItemName = part.ItemName };
            }
        );
    }

    private static ExecutionCore? CoreOf(Board board, string? name, ObjectFaults here)
    {
        if (name is null)
        {
            if (board.Cores is [var only])
            {
                return only;
            }

            here.Add(
                null,
                null,
                $"Board {Excerpt.Quoted(board.Name)} offers several execution cores, and none is named.",
                $"Add \"core\": one of {string.Join(", ", board.Cores.Select(core => Excerpt.Of(core.Name)))}."
            );
            return null;
        }

        var found = board.Cores.FirstOrDefault(core => string.Equals(core.Name, name, StringComparison.Ordinal));
        if (found is null)
        {
            here.Add(
                "core",
                name,
                $"{Excerpt.Quoted(name)} is no execution core of board {Excerpt.Quoted(board.Name)}.",
                NearestName.Mend(name, [.. board.Cores.Select(core => core.Name)], "cores")
            );
        }

        return found;
    }

    private static Clock? Clock(StudyTransfer.Clock part, ObjectFaults here)
    {
        var frequency = here.Quantity("frequency", part.Frequency, QuantityKind.Frequency);
        var sound = here.Optional("tolerance", part.Tolerance, QuantityKind.Ratio, out var tolerance);
        if (!sound || frequency is not { } hertz)
        {
            return null;
        }

        // The one property whose name in the file differs from the domain's.
        var clock = here.At("frequency").Make([], () => new Clock(Si.Frequency(hertz)));
        return clock is null
            ? null
            : here.Make(
                ["tolerance"],
                () => clock with { Tolerance = tolerance is { } share ? Si.Ratio(share) : null }
            );
    }

    private static BoardSupply? Supply(StudyTransfer.Supply part, ObjectFaults here)
    {
        var voltage = here.Quantity("voltage", part.Voltage, QuantityKind.Voltage);
        var sound = here.Optional("tolerance", part.Tolerance, QuantityKind.Ratio, out var tolerance);
        if (!sound || voltage is not { } volts)
        {
            return null;
        }

        return here.Make(
            ["voltage", "tolerance", "input"],
            () =>
                new BoardSupply(Si.Voltage(volts))
                {
                    Tolerance = tolerance is { } share ? Si.Ratio(share) : null,
                    Input = part.Input,
                    FedElsewhereToo = part.FedElsewhereToo,
                }
        );
    }

    private static Toolchain? Toolchain(StudyTransfer.Toolchain part, ObjectFaults here) =>
        here.Make(
            ["name", "version", "settings"],
            () => new Toolchain(part.Name) { Version = part.Version, Settings = part.Settings ?? [] }
        );

    private static Attachment? Attachment(StudyTransfer.Attachment part, ObjectFaults here)
    {
        var kind = here.Word<AttachmentKind>("kind", part.Kind);
        var state = here.Word<AttachmentState>("state", part.State);
        return kind is { } what && state is { } doing
            ? here.Make(["name"], () => new Attachment(what, part.Name, doing))
            : null;
    }
}
