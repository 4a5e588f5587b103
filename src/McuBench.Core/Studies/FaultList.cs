namespace McuBench.Core.Studies;

/// <summary>Gathers faults while a file is read: the first hundred in full, the rest by number, so that a file of nothing
/// but faults can't fill the memory.</summary>
internal sealed class FaultList
{
    private readonly List<StudyFault> faults = [];

    public int Count { get; private set; }

    /// <summary>Whether a further fault would be listed. Where not, its text needn't be made: count it alone.</summary>
    public bool HasRoom => faults.Count < StudyLimits.FaultsListed;

    public IReadOnlyList<StudyFault> Listed => [.. faults];

    public void Add(StudyFault fault)
    {
        CountOne();
        if (HasRoom)
        {
            faults.Add(fault);
        }
    }

    public void CountOne() => Count++;

    public void ThrowIfAny()
    {
        if (Count > 0)
        {
            throw new StudyFormatException(Listed, Count);
        }
    }
}
