namespace McuBench.Core.Boards;

/// <summary>What built the program: compiler or interpreter, its version, and the settings that move run times.</summary>
/// <remarks>Immutable; equal when all properties are equal, settings in order. Safe to use from many threads.</remarks>
public sealed record Toolchain
{
    /// <summary>Makes a toolchain.</summary>
    /// <param name="name">Its name.</param>
    /// <exception cref="ArgumentException">The name is blank or too long.</exception>
    public Toolchain(string name) => Name = name;

    /// <summary>Its name.</summary>
    public string Name
    {
        get;
        init => field = Require.Name(value, "Toolchain's name", nameof(Name));
    }

    /// <summary>Its version, when known.</summary>
    public string? Version
    {
        get;
        init => field = Require.OptionalName(value, "Toolchain's version", nameof(Version));
    }

    /// <summary>The build settings that matter (optimisation level, code in RAM or flash), one entry each.</summary>
    public IReadOnlyList<string> Settings
    {
        get;
        init
        {
            var settings = ValueList<string>.Of(value, "Build settings", nameof(Settings));
            foreach (var setting in settings)
            {
                _ = Require.Name(setting, "Build setting", nameof(Settings));
            }

            field = settings;
        }
    } = ValueList<string>.Empty;
}
