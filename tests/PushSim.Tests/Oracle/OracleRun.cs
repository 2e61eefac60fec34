using PushSim.Simulation;

namespace PushSim.Tests.Oracle;

/// <summary>A scenario, stepped plainly from its start to its end.</summary>
internal static class OracleRun
{
    /// <summary>Runs a scenario of one robot and records it.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="step">Fixed step, a whole part of the sampling time [s].</param>
    public static OracleRecord One(ScenarioSettings scenario, double step)
    {
        double sample = 1.0 / scenario.Numerics.SampleRate;
        int inner = (int)Math.Round(sample / step);
        double h = sample / inner;
        int samples = (int)Math.Round(scenario.Manoeuvre.EndTime / sample);
        var robot = new OracleRobot(scenario.Robot, scenario.Manoeuvre, scenario.Floor);
        OracleTether? tether = scenario.Tether is null ? null : new OracleTether(scenario.Tether, robot);
        var record = new OracleRecord(samples + 1);
        for (int k = 0; k <= samples; k++)
        {
            for (int j = 0; j < inner; j++)
            {
                double t = (k * sample) + (j * h);
                robot.Act(t, h);
                tether?.Pull(robot, t);
                if (j == 0)
                {
                    record.Add(t, robot, tether?.Force ?? 0.0, 0.0, 0.0);
                }
                robot.Move(h);
                tether?.Move(t, h);
            }
        }
        return record;
    }
}
