namespace PushSim.Analysis.Wear;

/// <summary>Wear of one wheel in one run, and what it comes to over a turn, a minute, a match.</summary>
/// <param name="Wheel">Its name.</param>
/// <param name="Tyre">Name of its tyre.</param>
/// <param name="Volume">Worn in the run [m^3].</param>
/// <param name="FrictionWork">Energy its tread lost on the floor in the run [J].</param>
/// <param name="VolumeRate">Worn per second: of a turn once it is settled, else the mean since the first command [m^3/s].</param>
public sealed record WheelWear(string Wheel, string Tyre, double Volume, double FrictionWork, double VolumeRate)
{
    /// <summary>Tread that a worn volume takes off its whole circumference: 1/(2 pi R w f), null if the width is not known [1/m^2].</summary>
    public double? DepthPerVolume { get; init; }

    /// <summary>Density of its cover; null if not known [kg/m^3].</summary>
    public double? Density { get; init; }

    /// <summary>Worn per turn of the robot on the spot; null unless it turns [m^3].</summary>
    public double? PerTurn { get; init; }

    /// <summary>Worn per minute of this manoeuvre [m^3].</summary>
    public double PerMinute => 60.0 * VolumeRate;

    /// <summary>Worn in a match [m^3].</summary>
    public required double PerMatch { get; init; }

    /// <summary>Worn per metre of straight driving with as much command, its start from rest included; null if not found [m^3/m].</summary>
    public double? PerStraightMetre { get; init; }

    /// <summary>The most that metre could wear, if all of the tread's friction work did; null if not found [m^3/m].</summary>
    public double? MostPerStraightMetre { get; init; }

    /// <summary>Depth of a worn volume; null if the width is not known [m].</summary>
    public double? Depth(double? volume) => volume * DepthPerVolume;

    /// <summary>Mass of a worn volume; null if the density is not known [kg].</summary>
    public double? Mass(double? volume) => volume * Density;
}
