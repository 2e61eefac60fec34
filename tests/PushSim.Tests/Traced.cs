using PushSim.Simulation;

namespace PushSim.Tests;

/// <summary>Parts of a trace by their names, where a test knows no order.</summary>
internal static class Traced
{
    public static WheelTrace Wheel(this Trace trace, string name) => trace.Wheels.Single(w => w.Name == name);
}
