namespace PushSim.Powertrain;

/// <summary>What a controller does at zero command.</summary>
public enum ZeroCommand
{
    /// <summary>Motor terminals open.</summary>
    Coast,

    /// <summary>Motor terminals shorted.</summary>
    Brake,

    /// <summary>Motors open and the drive held by its holding torque.</summary>
    Locked,
}
