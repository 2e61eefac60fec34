namespace PushSim.Analysis.Wear;

/// <summary>The tyres after a run of a series.</summary>
/// <param name="Run">Number of the run, from 1; 0 is before the first.</param>
/// <param name="Fouling">Dust on each wheel's tread, in the order of the wheels, 0 clean to 1 full [1].</param>
/// <param name="WheelGrip">Each wheel's grip as a share of its clean one [1].</param>
/// <param name="Grip">Grip of all wheels by load and friction, as a share of the clean one [1].</param>
/// <param name="Friction">Mean sliding friction coefficient of all wheels by load [1].</param>
/// <param name="IsCleaned">True for the state after the tyres were cleaned, which follows the one before.</param>
public sealed record GripAfterRun(int Run, IReadOnlyList<double> Fouling, IReadOnlyList<double> WheelGrip, double Grip, double Friction, bool IsCleaned);
