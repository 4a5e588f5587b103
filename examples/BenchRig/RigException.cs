namespace BenchRig;

/// <summary>Ends the rig with a message of one line and an exit code.</summary>
public sealed class RigException(int exitCode, string message, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>One of <see cref="BenchRig.ExitCode"/>.</summary>
    public int ExitCode { get; } = exitCode;
}
