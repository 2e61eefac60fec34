using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Whether what a tether feels is a pull of the tyres, or a robot that is jerked by it and bounces on it.</summary>
internal static class TetherPull
{
    // A tether that is slack for less than this bounced; one that hangs longer was let go [s].
    private const double ShortSlack = 0.2;

    // Share of a force on a tether that nothing held, from which on it is a jerk [1].
    private const double JerkShare = 0.2;

    // [s]
    private const double Before = 0.01;

    // Bounces from which a pull has no steady part.
    private const int ManyBounces = 3;

    /// <summary>What of the tether's force at a sample does not change the robot's speed: tyres and weight hold it [N].</summary>
    public static double Held(RunHistory history, Series force, int sample) => Math.Max(0.0, force[sample] - (history.Robot.Chassis.Mass * Acceleration(history, sample)));

    /// <summary>Whether the force at a sample changes the robot's speed by more than a share of it.</summary>
    public static bool IsJerk(RunHistory history, Series force, int sample) => force[sample] - Held(history, force, sample) > JerkShare * force[sample];

    // Change of the velocity up to a sample, over a time in which buzz of the tyres has no say; what follows a breakaway does not count [m/s^2]
    private static double Acceleration(RunHistory history, int sample)
    {
        (Series along, Series across) = (history.Trace.Body.Speed, history.Trace.Body.LateralSpeed);
        (int from, int to) = (history.IndexAt(history.Time[sample] - Before), sample);
        return to > from ? double.Hypot(along[to] - along[from], across[to] - across[from]) / (history.Time[to] - history.Time[from]) : 0.0;
    }

    /// <summary>How often the tether falls slack and is taut again at once; null where that is too seldom to matter.</summary>
    public static int? Bounces(Series time, Series force)
    {
        int count = 0;
        double slackSince = double.NaN;
        for (int i = 1; i < force.Length; i++)
        {
            if (force[i - 1] > 0.0 && force[i] <= 0.0)
            {
                slackSince = time[i];
            }
            else if (force[i - 1] <= 0.0 && force[i] > 0.0 && time[i] - slackSince < ShortSlack)
            {
                count++;
            }
        }

        return count >= ManyBounces ? count : null;
    }
}
