using PushSim.Binding;

namespace PushSim.Runs;

/// <summary>What was seen of one robot at the ends of a match's steps.</summary>
/// <param name="TurnedAside">Greatest turn off its start heading after the first touch, positive to its left [rad].</param>
/// <param name="PeakBatteryCurrent">Greatest battery current [A].</param>
/// <param name="PeakControllerCurrent">Greatest output current of one controller, never negative [A].</param>
/// <param name="LowestVoltage">Lowest battery voltage [V].</param>
/// <param name="LimitedBy">What bound it most since the first touch.</param>
public readonly record struct MatchRobot(
    double TurnedAside, double PeakBatteryCurrent, double PeakControllerCurrent, double LowestVoltage, BindingKind LimitedBy);
