using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>
/// Looks for the throttle of the hardest steady push at standstill, by the pull of <see cref="LimitFinder"/> at each throttle. How friction falls with slip is the least known of a tyre, since a pull
/// on a load cell hardly shows it: the answer has a range, from half the fall at twice the slip speed to one and a half times the fall at half of it (estimate, no source).
/// </summary>
public static class BestThrottleFinder
{
    // Throttle below which nobody pushes, and step of the first look [1].
    private const double Least = 0.05;
    private const double Step = 0.05;

    // Golden-section steps behind it: the throttle is then known to a thousandth.
    private const int Cuts = 9;

    private static readonly double s_golden = 0.5 * (Math.Sqrt(5.0) - 1.0);

    // The assumed falls: share of the fall, share of the slip speed [1].
    private static readonly (double Fall, double Speed)[] s_falls = [(0.5, 2.0), (1.5, 0.5)];

    /// <summary>The best throttle of a scenario's first robot; null where it has no steady push, or nothing drives it.</summary>
    /// <param name="scenario">Checked settings.</param>
    public static BestThrottle? Of(ScenarioSettings scenario)
    {
        if (scenario.Robot.Battery is null || scenario.Robot.Controllers.Count == 0 || scenario.Robot.Drives.All(d => d.Motors.Count == 0))
        {
            return null;
        }

        scenario = scenario with { Opponent = null, Walls = [] };
        double asked = LimitFinder.Throttle(scenario);
        if (Best(scenario, asked) is not var (throttle, push, now))
        {
            return null;
        }

        (double Throttle, double Push, double Asked)?[] falls = new (double, double, double)?[s_falls.Length];
        Parallel.For(0, falls.Length, i => falls[i] = Best(Falling(scenario, s_falls[i].Fall, s_falls[i].Speed), asked));
        (double Throttle, double Worth)[] all = [(throttle, (push / now) - 1.0), .. falls.Where(f => f is not null).Select(f => (f!.Value.Throttle, (f.Value.Push / f.Value.Asked) - 1.0))];
        return new BestThrottle(throttle, push, asked, now, all.Min(a => a.Throttle), all.Max(a => a.Throttle), all.Min(a => a.Worth), all.Max(a => a.Worth));
    }

    /// <summary>The same of both robots of a shove, the first robot first.</summary>
    /// <param name="scenario">Checked settings.</param>
    public static IReadOnlyList<BestThrottle?> OfBoth(ScenarioSettings scenario) => [Of(scenario), LimitFinder.OpponentScene(scenario) is { } other ? Of(other) : null];

    private static (double Throttle, double Push, double Asked)? Best(ScenarioSettings scenario, double asked)
    {
        double now = Push(asked);
        if (!(now > 0.0))
        {
            return null;
        }

        (double best, double most) = (asked, now);
        for (double t = asked - Step; t > Least; t -= Step)
        {
            double push = Push(t);
            (best, most) = push > most ? (t, push) : (best, most);
        }

        (double low, double high) = (Math.Max(Least, best - Step), Math.Min(asked, best + Step));
        (double a, double b) = (high - (s_golden * (high - low)), low + (s_golden * (high - low)));
        (double left, double right) = (Push(a), Push(b));
        for (int cut = 0; cut < Cuts; cut++)
        {
            (best, most) = left > most ? (a, left) : (best, most);
            (best, most) = right > most ? (b, right) : (best, most);
            if (cut == Cuts - 1)
            {
                break;
            }

            // one of the two points serves again
            if (left >= right)
            {
                (high, b, right) = (b, a, left);
                a = high - (s_golden * (high - low));
                left = Push(a);
            }
            else
            {
                (low, a, left) = (a, b, right);
                b = low + (s_golden * (high - low));
                right = Push(b);
            }
        }

        return (best, most, now);

        double Push(double throttle) => LimitFinder.Pull(scenario, new LimitCondition { Throttle = throttle })?.Force ?? double.NegativeInfinity;
    }

    // A table of friction over slip speed is measured and stays
    private static ScenarioSettings Falling(ScenarioSettings s, double fall, double speed) => s with
    {
        Robot = s.Robot with
        {
            Wheels = [.. s.Robot.Wheels.Select(w => w with
            {
                Tyre = w.Tyre with { KineticFriction = w.Tyre.StaticFriction - (fall * (w.Tyre.StaticFriction - w.Tyre.KineticFriction)), SlipSpeed = speed * w.Tyre.SlipSpeed },
            })],
        },
    };
}
