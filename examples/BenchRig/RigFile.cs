using System.Text.Json;
using System.Text.Json.Serialization;

namespace BenchRig;

/// <summary>A rig's file: which study is to be filled, how closely, and how each setup is reached.</summary>
public sealed record RigFile
{
    /// <summary>The study's file beside this one: boards, setups, workloads and timers, without trials.</summary>
    public required string Study { get; init; }

    /// <summary>The wanted half-width of each run time's interval, such as "1 %".</summary>
    public required string HalfWidth { get; init; }

    /// <summary>The most trials of each setup.</summary>
    public required int MostTrials { get; init; }

    /// <summary>What the order is drawn from.</summary>
    public required ulong Seed { get; init; }

    /// <summary>The ways to the boards.</summary>
    public required IReadOnlyList<WireFile> Wires { get; init; }

    /// <summary>Reads a rig's file.</summary>
    /// <exception cref="RigException">It isn't there or can't be taken as it is.</exception>
    public static RigFile Read(string path)
    {
        try
        {
            using var file = File.OpenRead(path);
            return JsonSerializer.Deserialize(file, RigJson.Default.RigFile)
                ?? throw new JsonException("It holds nothing but null.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new RigException(ExitCode.BadInput, $"{path}: {fault.Message}", fault);
        }
    }
}

/// <summary>The way to one setup: a port that a board hangs on, or a command of this computer.</summary>
public sealed record WireFile
{
    /// <summary>The setup's name in the study.</summary>
    public required string Setup { get; init; }

    /// <summary>The workload's name.</summary>
    public required string Workload { get; init; }

    /// <summary>The timer's name.</summary>
    public required string Timer { get; init; }

    /// <summary>Which physical board hangs on it.</summary>
    public string? Specimen { get; init; }

    /// <summary>The serial port, relative to the rig's file where it is no full path.</summary>
    public string? Port { get; init; }

    /// <summary>The port's speed; 115200 unless said.</summary>
    public int? Baud { get; init; }

    /// <summary>What makes the board run the workload once; the line "run" unless said.</summary>
    public string? Send { get; init; }

    /// <summary>How the board says its time: a regular expression with named groups.</summary>
    public string? Pattern { get; init; }

    /// <summary>How long an answer may take, in seconds; 10 unless said.</summary>
    public double? PatienceSeconds { get; init; }

    /// <summary>In place of a port: a program of this computer and its arguments, timed from outside.</summary>
    public IReadOnlyList<string>? Command { get; init; }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    ReadCommentHandling = JsonCommentHandling.Disallow
)]
[JsonSerializable(typeof(RigFile))]
internal sealed partial class RigJson : JsonSerializerContext;
