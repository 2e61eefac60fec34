using PushSim.Simulation;

namespace PushSim.Tests.Oracle;

/// <summary>A scenario, stepped plainly from its start to its end.</summary>
internal static class OracleRun
{
    /// <summary>Runs a scenario of one robot and records it.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="step">Fixed step, a whole part of the sampling time [s].</param>
    /// <param name="limitedGearDamping">See <see cref="OracleDrive.LimitedDamping"/>.</param>
    public static OracleRecord One(ScenarioSettings scenario, double step, bool limitedGearDamping = false)
    {
        double sample = 1.0 / scenario.Numerics.SampleRate;
        int inner = (int)Math.Round(sample / step);
        double h = sample / inner;
        int samples = (int)Math.Round(scenario.Manoeuvre.EndTime / sample);
        var robot = new OracleRobot(scenario.Robot, scenario.Manoeuvre, scenario.Floor, limitedGearDamping: limitedGearDamping);
        OracleTether? tether = scenario.Tether is null ? null : new OracleTether(scenario.Tether, robot);
        var record = new OracleRecord(samples + 1);
        for (int k = 0; k < samples; k++)
        {
            for (int j = 0; j < inner; j++)
            {
                double t = (k * sample) + (j * h);
                robot.Act(t, h);
                tether?.Pull(robot, t);
                if (k == 0 && j == 0)
                {
                    record.Add(0.0, robot, tether?.Force ?? 0.0, 0.0, 0.0);
                }
                robot.Move(h);
                tether?.Move(t, h);
            }

            // After the step: at a jump of the command the values are those before it, as in the engine's history.
            record.Add((k + 1) * sample, robot, tether?.Force ?? 0.0, 0.0, 0.0);
        }
        return record;
    }
}
