using McuBench.Core.Boards;
using McuBench.Core.Trials;

namespace DemoStudy;

/// <summary>What is true of a board in the demo's world, and what its bench knows of it.</summary>
/// <param name="Board">The board, as the bench names it.</param>
/// <param name="Timer">The timer that times its runs.</param>
/// <param name="Toolchain">What builds its programs.</param>
/// <param name="ClockTolerance">By how much the bench has to reckon with the clock being off, as a share.</param>
/// <param name="ClockError">By how much the clock really is off, as a share; known to nobody in the demo's world.</param>
/// <param name="TimerError">By how much the timer really reads long, as a share.</param>
/// <param name="BaseCurrent">The current it draws whatever its clock, in amperes.</param>
/// <param name="Voltage">The voltage at its input, in volts.</param>
public sealed record BoardTruth(
    Board Board,
    TrialTimer Timer,
    Toolchain Toolchain,
    double ClockTolerance,
    double ClockError,
    double TimerError,
    double BaseCurrent,
    double Voltage
);
