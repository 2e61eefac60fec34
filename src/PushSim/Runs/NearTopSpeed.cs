using PushSim.Binding;
using PushSim.Powertrain;
using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Whether motors that bind a push do so near their top speed rather than near their stall: their current was small against what would flow at a stand.</summary>
internal static class NearTopSpeed
{
    // Current against that of a stall, below which a motor is fast rather than weak [1].
    private const double TopSpeedShare = 0.3;

    /// <summary>Over the moments since the touch, or all without one (NaN), in which a motor binds a wheel.</summary>
    /// <param name="history">The run.</param>
    /// <param name="touch">When it first touched something [s].</param>
    public static bool Is(RunHistory history, double touch)
    {
        Trace trace = history.Trace;
        (double current, double stalled) = (0.0, 0.0);
        for (int i = double.IsNaN(touch) ? 0 : history.IndexAt(touch); i < history.Time.Length; i++)
        {
            if (!history.DrivenBindings.Any(w => w.Kinds[i] == BindingKind.Motor))
            {
                continue;
            }

            int next = 0;
            for (int k = 0; k < trace.Controllers.Count; k++)
            {
                ControllerSettings c = history.Robot.Controllers[k];
                double voltage = Math.Abs(trace.Controllers[k].Command[i]) * trace.Battery!.Voltage[i];
                double inSeries = c.Motors.Sum(m => history.Robot.Drives[m.Drive].Motors[m.Motor].Motor.Resistance);
                foreach ((int drive, int motor) in c.Motors)
                {
                    current += Math.Abs(trace.Motors[next++].Current[i]);
                    stalled += voltage / (c.Wiring == Wiring.Series ? inSeries : history.Robot.Drives[drive].Motors[motor].Motor.Resistance);
                }
            }
        }

        return current < TopSpeedShare * stalled;
    }
}
