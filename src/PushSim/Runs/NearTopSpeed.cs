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
        double[] bus = history["battery_voltage_v"];
        (double current, double stalled) = (0.0, 0.0);
        for (int i = double.IsNaN(touch) ? 0 : history.IndexAt(touch); i < history.Time.Length; i++)
        {
            if (!history.DrivenBindings.Any(w => w.Kinds[i] == BindingKind.Motor))
            {
                continue;
            }

            foreach (ControllerSettings c in history.Robot.Controllers)
            {
                double voltage = Math.Abs(history["command_" + Slug.Of(c.Name)][i]) * bus[i];
                double inSeries = c.Motors.Sum(m => history.Robot.Drives[m.Drive].Motors[m.Motor].Motor.Resistance);
                foreach ((int drive, int motor) in c.Motors)
                {
                    DriveSettings d = history.Robot.Drives[drive];
                    current += Math.Abs(history[$"motor_{Slug.Of(d.Name)}_{motor + 1}_current_a"][i]);
                    stalled += voltage / (c.Wiring == Wiring.Series ? inSeries : d.Motors[motor].Motor.Resistance);
                }
            }
        }

        return current < TopSpeedShare * stalled;
    }
}
