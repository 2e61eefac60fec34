using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Compare;

/// <summary>Sets a run beside a log, quantity by quantity.</summary>
public static class LogComparison
{
    /// <summary>The differences from a time on; quantities that the run does not have are left out.</summary>
    /// <param name="run">The run.</param>
    /// <param name="log">The log.</param>
    /// <param name="from">When counting begins [s].</param>
    /// <param name="to">When it ends [s].</param>
    public static IReadOnlyList<ChannelError> Of(RunResult run, ChannelLog log, double from = 0.0, double to = double.PositiveInfinity) =>
    [
        .. log.Channels.Where(c => !c.IsCommand).Select(c => Model(run, c) is { } series ? Error(run, log, c, series, from, to) : null).OfType<ChannelError>(),
    ];

    private static ChannelError? Error(RunResult run, ChannelLog log, Channel channel, double[] series, double from, double to)
    {
        double[] model = new double[log.Time.Length];
        double sum = 0.0, worst = 0.0, at = double.NaN, least = double.PositiveInfinity, most = double.NegativeInfinity;
        int count = 0;
        for (int i = 0; i < model.Length; i++)
        {
            double t = log.Time[i];
            model[i] = t <= run.Time[^1] + 1e-9 ? Between(run, series, t) : double.NaN;
            double difference = model[i] - channel.Values[i];
            if (t < from || t > to || !double.IsFinite(difference))
            {
                continue;
            }

            (least, most) = (Math.Min(least, channel.Values[i]), Math.Max(most, channel.Values[i]));
            sum += difference * difference;
            count++;
            (worst, at) = double.IsNaN(at) || Math.Abs(difference) > Math.Abs(worst) ? (difference, t) : (worst, at);
        }

        return count == 0 ? null : new ChannelError(channel, model, Math.Sqrt(sum / count), worst, at, most - least);
    }

    private static double Between(RunResult run, double[] series, double t)
    {
        int i = run.Trace.IndexAt(t);
        if (i == 0 || run.Time[i] <= t)
        {
            return series[i];
        }

        double share = (t - run.Time[i - 1]) / (run.Time[i] - run.Time[i - 1]);
        return series[i - 1] + (share * (series[i] - series[i - 1]));
    }

    // What the run has of a quantity at its own times; null for nothing
    private static double[]? Model(RunResult run, Channel channel)
    {
        RobotSettings robot = run.Scenario.Robot;
        Trace trace = run.Trace;
        switch (channel.Kind)
        {
            case ChannelKind.Speed:
                return [.. trace.Body.Speed];
            case ChannelKind.YawRate:
                return [.. trace.Body.YawRate];
            case ChannelKind.Voltage:
                return trace.Battery is null ? null : [.. trace.Battery.Voltage];
            case ChannelKind.Current:
                return trace.Battery is null ? null : [.. trace.Battery.Current];
            case ChannelKind.Force:
                return trace.Tether is null ? null : [.. trace.Tether.Force];
            case ChannelKind.SideCurrent:
                int[] controllers = [.. Enumerable.Range(0, trace.Controllers.Count).Where(k => robot.Controllers[k].Side == channel.Side)];
                return controllers.Length == 0 ? null : [.. Enumerable.Range(0, run.Time.Length).Select(i => controllers.Sum(k => trace.Controllers[k].Current[i]))];
            default:
                int[] drives = [.. Enumerable.Range(0, robot.Drives.Count).Where(k => IsDriven(run, k) && LogReplay.SideOf(robot, robot.Drives[k]) == channel.Side)];
                if (drives.Length == 0 || (channel.Kind == ChannelKind.MotorSpin && drives.Any(d => robot.Drives[d].Motors.Count == 0)))
                {
                    return null;
                }

                // the mean of the side's drives, as a log with several of them is read
                double[] perRim = [.. drives.Select(d => LogReplay.DrivePer(ChannelKind.SideSpeed, robot, robot.Drives[d]) / LogReplay.DrivePer(channel.Kind, robot, robot.Drives[d]))];
                return [.. Enumerable.Range(0, run.Time.Length).Select(i => drives.Select((d, n) => perRim[n] * trace.Wheels[robot.Drives[d].Wheels[0].Wheel].SurfaceSpeed[i]).Average())];
        }
    }

    private static bool IsDriven(RunResult run, int drive) => run.Scenario.Robot.Drives[drive].Motors.Count > 0 || run.Scenario.GivenSpeeds.Any(g => g.Drive == drive);
}
