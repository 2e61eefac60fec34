namespace PushSim.Runs;

/// <summary>What of a robot's numbers no robot of this kind has: a slip of a unit, a shaft or a ratio stands behind most of it. The bounds are common practice, no source.</summary>
public abstract record Implausible
{
    private Implausible()
    {
    }

    /// <summary>It hardly moves.</summary>
    /// <param name="Speed">Top speed [m/s].</param>
    public sealed record Slow(double Speed) : Implausible;

    /// <summary>It is faster than any such robot.</summary>
    /// <param name="Speed">Top speed [m/s].</param>
    public sealed record Fast(double Speed) : Implausible;

    /// <summary>Its motors give many times what its tyres hold.</summary>
    /// <param name="Motors">What all motors give at the floor at standstill [N].</param>
    /// <param name="Tyres">What all driven tyres hold [N].</param>
    public sealed record Strong(double Motors, double Tyres) : Implausible;

    /// <summary>Its motors give a small part of what its tyres hold.</summary>
    /// <param name="Motors">What all motors give at the floor at standstill [N].</param>
    /// <param name="Tyres">What all driven tyres hold [N].</param>
    public sealed record Weak(double Motors, double Tyres) : Implausible;

    /// <summary>It takes very long over its first metre.</summary>
    /// <param name="Time">That time [s]; null: it does not start.</param>
    public sealed record Late(double? Time) : Implausible;

    /// <summary>It takes more current than packs and leads of such robots bear.</summary>
    /// <param name="Current">Greatest battery current [A].</param>
    public sealed record Hungry(double Current) : Implausible;
}
