using McuBench.Core.Quantities;

namespace McuBench.Core.Studies;

/// <summary>The things of one kind that a study lists, found by name. The names of those left out for a fault are kept,
/// so that what refers to them is left out without a second complaint.</summary>
internal sealed class NamedThings<T>(string kind, string kinds)
    where T : class
{
    private readonly Dictionary<string, T> known = new(StringComparer.Ordinal);
    private readonly List<T> inOrder = [];
    private readonly HashSet<string> leftOut = new(StringComparer.Ordinal);

    /// <summary>The things in the order listed.</summary>
    public IReadOnlyList<T> All => inOrder;

    /// <summary>Whether things may be missing that the file was meant to list; then a name that is not found is no fault
    /// of its own.</summary>
    public bool IsIncomplete { get; set; }

    public void AddAll(IEnumerable<T> things, Func<T, string> nameOf)
    {
        foreach (var thing in things)
        {
            Add(nameOf(thing), thing);
        }
    }

    /// <summary>Adds a thing, unless one of its name is there already.</summary>
    public bool Add(string name, T thing)
    {
        if (!known.TryAdd(name, thing))
        {
            return false;
        }

        inOrder.Add(thing);
        return true;
    }

    public void LeaveOut(string name) => leftOut.Add(name);

    /// <summary>Finds a thing; says so in <paramref name="faults"/> where it is neither known nor left out.</summary>
    public T? Find(string name, string property, IFieldFaults faults)
    {
        if (known.TryGetValue(name, out var thing))
        {
            return thing;
        }

        if (!IsIncomplete && !leftOut.Contains(name))
        {
            faults.Add(
                property,
                name,
                $"{Excerpt.Quoted(name)} is no {kind} of this study.",
                NearestName.Mend(name, known.Keys, kinds)
            );
        }

        return null;
    }
}
