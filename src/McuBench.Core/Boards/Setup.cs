using UnitsNet;

namespace McuBench.Core.Boards;

/// <summary>
/// All that a trial was run on: board, one of its execution cores, clock, supply, toolchain and attachments. Setups,
/// not boards, are what is compared.
/// </summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record Setup
{
    /// <summary>Makes a setup.</summary>
    /// <param name="name">Its name, distinct within a study.</param>
    /// <param name="board">The board.</param>
    /// <param name="core">The execution core in use, one of <paramref name="board"/>'s.</param>
    /// <param name="clock">The clock it runs at.</param>
    /// <exception cref="ArgumentException">The name is blank or too long, or the core is not one of the board's.</exception>
    public Setup(string name, Board board, ExecutionCore core, Clock clock)
    {
        Name = name;
        Board = Require.Given(board, nameof(board));
        Core = Require.Given(core, nameof(core));
        Clock = clock;
        if (!board.Cores.Contains(core))
        {
            throw new ArgumentException(
                $"A setup's core must be one of board \"{board.Name}\"'s ({string.Join(", ", board.Cores.Select(c => c.Name))}); was \"{core.Name}\".",
                nameof(core)
            );
        }
    }

    /// <summary>Makes a setup of a board with a single execution core.</summary>
    /// <param name="name">Its name, distinct within a study.</param>
    /// <param name="board">The board, with one execution core.</param>
    /// <param name="clock">The nominal frequency of its clock, above zero.</param>
    /// <exception cref="ArgumentException">The board offers more than one core, so that the one in use must be said.</exception>
    public Setup(string name, Board board, Frequency clock)
        : this(name, board, OnlyCore(board), new Clock(clock)) { }

    /// <summary>Its name, distinct within a study.</summary>
    public string Name
    {
        get;
        init => field = Require.Name(value, "Setup's name", nameof(Name));
    }

    /// <summary>The board.</summary>
    public Board Board { get; }

    /// <summary>The execution core in use.</summary>
    public ExecutionCore Core { get; }

    /// <summary>The clock it runs at.</summary>
    public Clock Clock
    {
        get;
        init => field = Require.Given(value, nameof(Clock));
    }

    /// <summary>How it is fed, when known.</summary>
    public BoardSupply? Supply { get; init; }

    /// <summary>What built the program, when known.</summary>
    public Toolchain? Toolchain { get; init; }

    /// <summary>What hangs on the board and draws from the same supply, with distinct names.</summary>
    public IReadOnlyList<Attachment> Attachments
    {
        get;
        init
        {
            var attachments = ValueList<Attachment>.Of(value, "Attachments", nameof(Attachments));
            var names = new HashSet<string>(StringComparer.Ordinal);
            foreach (var attachment in attachments)
            {
                if (!names.Add(attachment.Name))
                {
                    throw new ArgumentException(
                        $"Attachments of a setup must have distinct names; \"{attachment.Name}\" stands twice.",
                        nameof(Attachments)
                    );
                }
            }

            field = attachments;
        }
    } = ValueList<Attachment>.Empty;

    private static ExecutionCore OnlyCore(Board board)
    {
        ArgumentNullException.ThrowIfNull(board);
        return board.Cores is [var only]
            ? only
            : throw new ArgumentException(
                $"Board \"{board.Name}\" offers {board.Cores.Count} execution cores: say which of them is in use.",
                nameof(board)
            );
    }
}
