using PushSim.Analysis.Chance;
using PushSim.Analysis.Limits;
using PushSim.Analysis.Wear;
using PushSim.Binding;
using PushSim.Runs;

namespace PushSim.Analysis.Meaning;

/// <summary>What a tyre makes of a robot.</summary>
public sealed record TyreMeaning
{
    /// <summary>The tyre.</summary>
    public required FittedTyre Tyre { get; init; }

    /// <summary>Whether the motors are the stronger ones.</summary>
    public required bool IsStronger { get; init; }

    /// <summary>Force at the floor that motors, controllers and battery could give at standstill [N]; NaN if the robot could not be run.</summary>
    public double MotorForce { get; init; } = double.NaN;

    /// <summary>Force that the tyres hold at standstill at the fitted friction [N]; NaN if the robot could not be run.</summary>
    public double TyreForce { get; init; } = double.NaN;

    /// <summary>The most that they may hold [N]: the same; null where the friction is only a lower bound.</summary>
    public double? TyreForceHigh => Tyre.IsAtLeast ? null : TyreForce;

    /// <summary>What binds the standing push at this friction, by what a tenth more of it buys, the most first; empty if not known.</summary>
    public IReadOnlyList<BoundBy> Bound { get; init; } = [];

    /// <summary>Whether the tyres bind at a friction that is only a lower bound, so that neither the push nor what binds it is known.</summary>
    public bool IsOpen => Tyre.IsAtLeast && IsHeldByTyres;

    /// <summary>What binds it most; null if not known.</summary>
    public BindingKind? Binding => Bound.Count > 0 && !IsOpen ? Bound[0].Kind : null;

    /// <summary>Standing push with what it may be [N]: up to what the motors could give where the tyres' friction is only a lower bound; NaN if the robot could not be run.</summary>
    public Bounds Push => new(Math.Min(MotorForce, TyreForce), IsOpen ? MotorForce : Math.Min(MotorForce, TyreForce));

    /// <summary>Whether tyres of more grip would push harder.</summary>
    public bool IsHeldByTyres => Bound.Any(b => b.Kind == BindingKind.Tyre);

    /// <summary>Time from the command at rest over the first metre [s]; null if it does not get there in <see cref="MeaningFinder.LaunchTime"/>.</summary>
    public double? FirstMetre { get; init; }

    /// <summary>How well it turns on the spot; null if it could not be run.</summary>
    public TurnEase? Turn { get; init; }

    /// <summary>Yaw rate of that turn [rad/s]; null if it could not be run.</summary>
    public double? YawRate { get; init; }

    /// <summary>Whether its tyres chatter in that turn.</summary>
    public ChatterVerdict Chatter { get; init; } = ChatterVerdict.Unknown(ChatterDoubt.Stopped);

    /// <summary>Grip over many such turns; null if it is not known.</summary>
    public GripLife? Life { get; init; }

    /// <summary>Worn off all wheels in a minute of that turn [m^3]; null if it is not known.</summary>
    public double? WearPerMinute { get; init; }

    /// <summary>The shoves; null without an opponent.</summary>
    public Tally? Shoves { get; init; }

    /// <summary>Why the launch or the turn could not be run to its end; null if they were.</summary>
    public RunStop? Stop { get; init; }

    /// <summary>95 % interval of the share of shoves won [1]; null without shoves. More grip only wins more, so that of a friction that is a lower bound it has no upper end.</summary>
    public Bounds? WinShare => Shoves is { Matches: > 0 } t ? Tyre.IsAtLeast ? t.WinInterval with { High = double.NaN } : t.WinInterval : null;
}
