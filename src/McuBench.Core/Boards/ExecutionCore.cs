namespace McuBench.Core.Boards;

/// <summary>
/// One of the execution cores that a board offers. A board may offer several of different kinds; a setup uses one.
/// </summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record ExecutionCore
{
    /// <summary>Makes an execution core.</summary>
    /// <param name="name">Its name, distinct within its board.</param>
    /// <exception cref="ArgumentException">The name is blank, longer than 200 characters, or holds a control character.</exception>
    public ExecutionCore(string name) => Name = name;

    /// <summary>Its name, distinct within its board.</summary>
    public string Name
    {
        get;
        init => field = Require.Name(value, "Execution core's name", nameof(Name));
    }

    /// <summary>What kind of core it is (instruction set, width, floating-point unit), in the bench's own words, when known.</summary>
    public string? Description
    {
        get;
        init => field = Require.OptionalDescription(value, "Execution core's description", nameof(Description));
    }
}
