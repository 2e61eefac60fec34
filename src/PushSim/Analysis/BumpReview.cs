using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>What the bump of a shove was, and what of the ground it gave: the same robots run once more nose to nose.</summary>
public static class BumpReview
{
    // Slower they do not bump [m/s]; less ground tells no share [m].
    private const double LeastSpeed = 0.01;
    private const double LeastGround = 0.02;

    // Gap of robots that stand nose to nose [m].
    private const double NoGap = 1e-5;

    /// <summary>The bump; null where the robots never touch or meet too slowly.</summary>
    /// <param name="result">The run.</param>
    /// <param name="cancel">Stops the further run.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static Bump? Of(RunResult result, CancellationToken cancel = default) => Of(result, WorkBudget.Endless(cancel));

    /// <summary>The same as a part of more work.</summary>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    internal static Bump? Of(RunResult result, WorkBudget work)
    {
        if (result.Shove is not { FirstContact: double touch } || result.Opponent is not { } other)
        {
            return null;
        }

        int i = Math.Max(1, result.Trace.IndexAt(touch) - 1);
        double span = result.Trace.Time[i] - result.Trace.Time[i - 1];
        double speed = (result.Trace.Body.X[i] - result.Trace.Body.X[i - 1] + other.Trace.Body.X[i] - other.Trace.Body.X[i - 1]) / span;
        if (!(speed > LeastSpeed))
        {
            return null;
        }

        ScenarioSettings s = result.Scenario;
        (double one, double two) = (s.Robot.Chassis.Mass, other.Robot.Chassis.Mass);
        double mass = one * two / (one + two);
        double share = Contact.Restitution.Share(Contact.Restitution.Damping(s.Contact.Restitution), speed);
        var bump = new Bump(speed, mass * speed * (1.0 + share), 0.5 * mass * speed * speed * (1.0 - (share * share)), share);
        PlaceTape? close = PlaceRun.Of(s with { Shove = s.Shove with { Gap = NoGap } }, work);
        return bump with { GroundShare = close is null ? null : Ground(result, close) };
    }

    // of what was gained by the moment at which the shorter of both ends, counted from the touch
    private static double? Ground(RunResult far, PlaceTape close)
    {
        double near = close.Watch.TouchTime;
        if (double.IsNaN(near) || close.Time.Length < 2)
        {
            return null;
        }

        Trace other = far.Opponent!.Trace;
        double touch = far.Shove!.FirstContact!.Value;
        double after = Math.Min(far.Time[^1] - touch, close.Time[^1] - near);
        double gained = Gained(far.Time.Values, far.Trace.Body.X.Values, other.Body.X.Values, touch, after);
        return Math.Abs(gained) < LeastGround ? null : 1.0 - (Gained(close.Time, close.X(0), close.X(1), near, after) / gained);
    }

    // of both centres together, along the first robot's floor x: what touches may change its place on a nose
    private static double Gained(ReadOnlySpan<double> time, ReadOnlySpan<double> x, ReadOnlySpan<double> otherX, double touch, double after)
    {
        (int from, int to) = (Trace.FirstAt(time, touch), Trace.FirstAt(time, touch + after));
        return 0.5 * (x[to] - x[from] - (otherX[to] - otherX[from]));
    }
}
