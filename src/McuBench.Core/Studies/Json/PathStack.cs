using System.Globalization;
using System.Text;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Json;

/// <summary>The way from the document's root to the value being read; spelt out only when a fault needs it.</summary>
internal sealed class PathStack
{
    private readonly List<(string? Name, int Index)> steps = [];

    /// <summary>The name of the innermost property; empty inside a list, and at the root.</summary>
    public string LastName => steps is [.., (var name, _)] ? name ?? string.Empty : string.Empty;

    public void Push(string name) => steps.Add((name, 0));

    public void Push(int index) => steps.Add((null, index));

    public void Pop() => steps.RemoveAt(steps.Count - 1);

    /// <summary>The path as RFC 9535 writes it: <c>$.setups[2].clock</c>, and <c>$['odd name']</c> for other names.</summary>
    public override string ToString()
    {
        var path = new StringBuilder("$");
        foreach (var (name, index) in steps)
        {
            if (name is null)
            {
                path.Append(CultureInfo.InvariantCulture, $"[{index}]");
            }
            else if (name.Length > 0 && name.All(char.IsAsciiLetterOrDigit) && !char.IsAsciiDigit(name[0]))
            {
                path.Append('.').Append(name.Length > Excerpt.MaxLength ? Excerpt.Of(name) : name);
            }
            else
            {
                path.Append(CultureInfo.InvariantCulture, $"['{Excerpt.Of(name)}']");
            }
        }

        return path.ToString();
    }
}
