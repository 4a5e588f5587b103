namespace McuBench.Core.Boards;

/// <summary>A model of board: its name and the execution cores that it offers.</summary>
/// <remarks>
/// What is measured of a board is the whole of it: regulator, indicators and converters are in every supply reading.
/// One physical board of a model is a specimen; trials and readings name theirs.
/// Immutable; equal when all properties are equal. Safe to use from many threads.
/// </remarks>
public sealed record Board
{
    /// <summary>Makes a board.</summary>
    /// <param name="name">The model's name, distinct within a study.</param>
    /// <param name="cores">The execution cores, at least one, with distinct names.</param>
    /// <exception cref="ArgumentException">The name is blank or too long, there is no core, or two cores share a name.</exception>
    public Board(string name, IEnumerable<ExecutionCore> cores)
    {
        Name = name;
        Cores = Distinct(ValueList<ExecutionCore>.Of(cores, "Execution cores", nameof(cores)), nameof(cores));
    }

    /// <summary>Makes a board that offers a single execution core.</summary>
    /// <param name="name">The model's name; its one core is called "core".</param>
    public Board(string name)
        : this(name, [new ExecutionCore("core")]) { }

    /// <summary>The model's name, distinct within a study.</summary>
    public string Name
    {
        get;
        init => field = Require.Name(value, "Board's name", nameof(Name));
    }

    /// <summary>The execution cores on offer, at least one, with distinct names.</summary>
    public IReadOnlyList<ExecutionCore> Cores { get; }

    /// <summary>Anything else worth knowing of the model, when known.</summary>
    public string? Description
    {
        get;
        init => field = Require.OptionalDescription(value, "Board's description", nameof(Description));
    }

    private static ValueList<ExecutionCore> Distinct(ValueList<ExecutionCore> cores, string parameter)
    {
        if (cores.Count == 0)
        {
            throw new ArgumentException(
                "A board must offer at least one execution core; the list was empty.",
                parameter
            );
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var core in cores)
        {
            if (!names.Add(core.Name))
            {
                throw new ArgumentException(
                    $"Execution cores of a board must have distinct names; \"{core.Name}\" stands twice.",
                    parameter
                );
            }
        }

        return cores;
    }
}
