namespace PushSim.Powertrain;

/// <summary>Which side of the robot's mix a controller follows.</summary>
public enum CommandSide
{
    /// <summary>Left command.</summary>
    Left,

    /// <summary>Right command.</summary>
    Right,
}
