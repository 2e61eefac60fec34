namespace PushSim.Runs;

/// <summary>Whether what a tether feels is a pull of the tyres, or a robot that is jerked by it and bounces on it.</summary>
internal static class TetherPull
{
    // A tether that is slack for less than this bounced; one that hangs longer was let go [s].
    private const double ShortSlack = 0.2;

    // Share of a force on a tether that the tyres did not hold, from which on it is a jerk [1].
    private const double JerkShare = 0.2;

    // Bounces from which a pull has no steady part.
    private const int ManyBounces = 3;

    /// <summary>What the tyres hold of the tether's force at a sample [N].</summary>
    public static double Held(RunHistory history, int sample) => Math.Abs(history.Robot.Wheels.Select((_, i) => history.Wheel(i, "longitudinal_force_n")[sample]).Sum());

    /// <summary>Whether the force at a sample mostly changes the robot's speed.</summary>
    public static bool IsJerk(RunHistory history, double[] force, int sample) => force[sample] - Held(history, sample) > JerkShare * force[sample];

    /// <summary>How often the tether falls slack and is taut again at once; null where that is too seldom to matter.</summary>
    public static int? Bounces(double[] time, double[] force)
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
