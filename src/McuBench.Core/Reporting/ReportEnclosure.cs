using System.Security.Cryptography;

namespace McuBench.Core.Reporting;

/// <summary>A file that the report carries within itself, where its form can: the study that it was made from.</summary>
/// <remarks>Immutable; equal when name and content are equal. Safe to use from many threads.</remarks>
public sealed record ReportEnclosure : ReportBlock
{
    private readonly byte[] content;

    /// <summary>Encloses a file. O(n) in its content, which is copied.</summary>
    /// <param name="name">What it is called where it is saved: "study.json".</param>
    /// <param name="content">What is in it.</param>
    public ReportEnclosure(string name, ReadOnlySpan<byte> content)
    {
        Name = Require.Name(name, "Enclosed file's name", nameof(name));
        this.content = content.ToArray();
        Sha256 = Convert.ToHexStringLower(SHA256.HashData(content));
    }

    /// <summary>What it is called where it is saved.</summary>
    public string Name { get; }

    /// <summary>What is in it.</summary>
    public ReadOnlyMemory<byte> Content => content;

    /// <summary>The SHA-256 of its content, 64 hexadecimal digits in lower case.</summary>
    public string Sha256 { get; }

    /// <summary>Equal when name and content are equal.</summary>
    public bool Equals(ReportEnclosure? other) =>
        other is not null && Name == other.Name && content.AsSpan().SequenceEqual(other.content);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Sha256);
}
