using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>What a tether felt: the pull of the tyres, their breakaway, and the jerk of a robot that it stops or sets moving.</summary>
/// <param name="From">First sample of the plateau.</param>
/// <param name="Plateau">Mean force from there to the end [N].</param>
/// <param name="Jerk">The peak that hides the breakaway, since part of it changed the robot's speed, else the first such peak before it; null for none.</param>
/// <param name="JerkSample">Sample of that peak.</param>
/// <param name="LetGo">Sample and force at which the tyres let go [N]; null where they never do, or where the jerk does not even leave it to the tyres' own forces.</param>
/// <param name="IsHidden">Whether the jerk hides the breakaway in the tether's force.</param>
internal sealed record TetherPull(int From, double Plateau, TetherJerk? Jerk, int JerkSample, (int Sample, double Force)? LetGo, bool IsHidden)
{
    // A tether that is slack for less than this bounced; one that hangs longer was let go [s].
    private const double ShortSlack = 0.2;

    // Share of a force on a tether that nothing held, from which on it is a jerk: what is left is the tyre's to that share [1].
    private const double JerkShare = 0.02;

    // Share by which a jerk is above the breakaway from which on it is warned of [1].
    private const double Telling = 0.05;

    // [s]
    private const double Before = 0.01;

    // A robot that is slower than this stands when the tether goes taut [m/s].
    private const double Standing = 1e-3;

    // A tread that slides by more has let go, and so has a robot of which more of the load stands on such treads [1].
    private const double Slides = 0.9;

    // Bounces from which a pull has no steady part.
    private const int ManyBounces = 3;

    /// <summary>Whether to warn of the jerk: it hides a breakaway altogether, or is well above all that was held.</summary>
    public bool IsTelling => Jerk is { } jerk && (LetGo is var (_, held) ? jerk.Force > (1.0 + Telling) * held : IsHidden || jerk.Force > Plateau);

    /// <summary>What a run's tether felt; null if it never went taut.</summary>
    public static TetherPull? Of(RunHistory history)
    {
        if (history.Trace.Tether?.Force is not { } force || force.Max() <= 0.0)
        {
            return null;
        }

        int taut = force.FindIndex(f => f > 0.0);
        int last = force.Length - 1;
        int from = history.IndexAt(history.Time[last] - (AnswerFinder.SettledShare * (history.Time[last] - history.Time[taut])));
        double plateau = force.Mean(from, last);
        TetherPull pull = new(from, plateau, null, 0, null, false);
        for (int start = taut; start < from;)
        {
            (int peak, int fallen) = FirstPeak(force, start, from, plateau);
            double held = Math.Max(0.0, force[peak] - (history.Robot.Chassis.Mass * Acceleration(history, peak)));
            bool isJerk = force[peak] - held > JerkShare * force[peak];
            bool hasSlid = HasSlid(history, taut, fallen);
            pull = isJerk && (hasSlid || pull.Jerk is null) ? pull with { Jerk = new TetherJerk(force[peak], held), JerkSample = peak, IsHidden = hasSlid } : pull;
            if (hasSlid)
            {
                // on a robot that stood the force rose as its tyres held it, until they let go; one that moved loads them by its own way of stopping
                return pull with { LetGo = !isJerk ? (peak, force[peak]) : Speed(history, taut) < Standing ? MostOfTyres(history, taut, peak) : null };
            }

            start = fallen;
        }

        return pull;
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

    // The first peak that stands out, by the sample at which force has since fallen by a tenth, and it was no ripple of the first pull; without one the greatest force
    private static (int Sample, int Fallen) FirstPeak(Series force, int start, int last, double plateau)
    {
        int peak = start;
        for (int i = start; i <= last; i++)
        {
            peak = force[i] > force[peak] ? i : peak;
            if (force[peak] > 0.5 * plateau && force[i] < 0.9 * force[peak])
            {
                return (peak, i);
            }
        }

        return (peak, last);
    }

    // Whether the tyres that hold the robot let go at once: those that slide carry nearly all of their load
    private static bool HasSlid(RunHistory history, int from, int to)
    {
        IReadOnlyList<WheelTrace> wheels = history.Trace.Wheels;
        WheelTrace[] holding = history.Robot.DrivenWheels.Count > 0 ? [.. history.Robot.DrivenWheels.Select(w => wheels[w])] : [.. wheels];
        return Enumerable.Range(from, to - from + 1).Any(i => holding.Where(w => w.Sliding[i] > Slides).Sum(w => w.Load[i]) > Slides * holding.Sum(w => w.Load[i]));
    }

    // The greatest force of all tyres together along the floor
    private static (int Sample, double Force) MostOfTyres(RunHistory history, int from, int to)
    {
        IReadOnlyList<WheelTrace> wheels = history.Trace.Wheels;
        double Held(int i) => double.Hypot(wheels.Sum(w => w.LongitudinalForce[i]), wheels.Sum(w => w.LateralForce[i]));
        int most = Enumerable.Range(from, to - from + 1).MaxBy(Held);
        return (most, Held(most));
    }

    private static double Speed(RunHistory history, int sample) => double.Hypot(history.Trace.Body.Speed[sample], history.Trace.Body.LateralSpeed[sample]);

    // Change of the velocity up to a sample, over a time in which buzz of the tyres has no say; what follows a breakaway does not count [m/s^2]
    private static double Acceleration(RunHistory history, int sample)
    {
        (Series along, Series across) = (history.Trace.Body.Speed, history.Trace.Body.LateralSpeed);
        (int from, int to) = (history.IndexAt(history.Time[sample] - Before), sample);
        return to > from ? double.Hypot(along[to] - along[from], across[to] - across[from]) / (history.Time[to] - history.Time[from]) : 0.0;
    }
}
