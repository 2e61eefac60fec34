namespace PushSim.Scenarios.Logs;

/// <summary>What a column of a log holds.</summary>
internal enum LogRole
{
    Ignored,
    Time,
    Force,
    Tyre,
    Material,
    Pull,
    Load,
    Peak,
    SurfaceSpeed,
    TurnRate,
    Current,
    Voltage,
    Unit,
}
