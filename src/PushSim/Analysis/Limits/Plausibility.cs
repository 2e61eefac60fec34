using PushSim.Binding;
using PushSim.Runs;

namespace PushSim.Analysis.Limits;

/// <summary>A robot in a few numbers, by which its builder sees whether the file means the robot on the table: those of the limits as in the file.</summary>
public sealed record Plausibility
{
    private const double SlowestTop = 0.1;
    private const double FastestTop = 15.0;

    // Motors over tyres, and tyres over motors [1].
    private const double MostForceRatio = 10.0;

    private const double LongestMetre = 10.0;
    private const double MostCurrent = 200.0;

    /// <summary>The robot's name.</summary>
    public required string Robot { get; init; }

    /// <summary>Throttle at which all of it holds, 0..1 [1].</summary>
    public required double Throttle { get; init; }

    /// <summary>Top speed [m/s].</summary>
    public required double TopSpeed { get; init; }

    /// <summary>What all motors give at the floor at standstill [N].</summary>
    public required double MotorForce { get; init; }

    /// <summary>What all driven tyres hold as they break away [N].</summary>
    public required double TyreForce { get; init; }

    /// <summary>Steady pull at standstill [N]; null where there is none.</summary>
    public required double? Pull { get; init; }

    /// <summary>What binds that pull most; null where it is not known.</summary>
    public required BindingKind? Binding { get; init; }

    /// <summary>Pull at which it rears up before it pulls with all it has [N]; null where it does not.</summary>
    public required double? RearsUpAt { get; init; }

    /// <summary>Weight of the whole robot [N].</summary>
    public required double Weight { get; init; }

    /// <summary>Time for the first metre from rest [s]; null if it does not start.</summary>
    public required double? FirstMetre { get; init; }

    /// <summary>Greatest battery current from standstill to top speed [A].</summary>
    public required double Current { get; init; }

    /// <summary>What of it cannot be meant; empty if all may be.</summary>
    public IReadOnlyList<Implausible> Doubts =>
    [
        .. TopSpeed < SlowestTop && FirstMetre is not null ? [new Implausible.Slow(TopSpeed)] : TopSpeed > FastestTop ? [new Implausible.Fast(TopSpeed)] : Array.Empty<Implausible>(),
        .. MotorForce > MostForceRatio * TyreForce ? [new Implausible.Strong(MotorForce, TyreForce)]
            : MotorForce * MostForceRatio < TyreForce ? [new Implausible.Weak(MotorForce, TyreForce)] : Array.Empty<Implausible>(),
        .. FirstMetre is null or > LongestMetre ? [new Implausible.Late(FirstMetre)] : Array.Empty<Implausible>(),
        .. Current > MostCurrent ? [new Implausible.Hungry(Current)] : Array.Empty<Implausible>(),
    ];
}
