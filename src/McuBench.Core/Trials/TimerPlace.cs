namespace McuBench.Core.Trials;

/// <summary>Where a timer's oscillator sits: it decides whether its error is shared by the boards that are compared.</summary>
public enum TimerPlace
{
    /// <summary>On the board: each board (and each specimen) has an oscillator of its own, off by an amount of its own.</summary>
    OnBoard,

    /// <summary>Outside, one for all: its scale error is common and cancels in a ratio; its resolution does not.</summary>
    Outside,
}
