using PushSim.Binding;
using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Finds a run's answers in its history: what a builder would read off the plots, by stated rules.</summary>
internal static class AnswerFinder
{
    /// <summary>The settled part of a turn or pull is this last share of the time since the robot first loaded its tyres or tether [1].</summary>
    public const double SettledShare = 0.4;

    /// <summary>A robot that turns slower than this does not turn [rad/s].</summary>
    public const double LeastYawRate = 1e-3;

    /// <summary>A robot that is never faster than this does not move forward [m/s].</summary>
    public const double LeastSpeed = 1e-3;

    /// <summary>What holds for any run, also one that ended with the robot tipped before anything was steady.</summary>
    public static RunAnswers OfAny(RunHistory history) => new()
    {
        Peaks = history.Peaks,
        ChargeUsed = history.Trace.Battery?.ChargeUsed[^1],
        PeakBatteryTemperature = history.Trace.Battery?.Temperature?.Max(),
        PeakWindingTemperature = history.Trace.Motors.Max(m => m.WindingTemperature?.Max()),
        Wear = TotalWear(history.Trace),
        WearPerWork = WearPerWork(history.Trace),
        Travel = Travel(history.Trace.Body),
    };

    /// <summary>All answers of a run.</summary>
    public static RunAnswers Find(RunHistory history, List<Mark> marks)
    {
        RunAnswers answers = OfAny(history) with { Chatter = ChatterFinder.Find(history), IsChatterLookedFor = ChatterFinder.Window(history).Count > 0 };
        return history.Scenario.Manoeuvre.Traits.Family switch
        {
            ManoeuvreFamily.Pull => Pull(history, answers, marks),
            ManoeuvreFamily.Turn => Turn(history, answers, marks),
            ManoeuvreFamily.Stop => Stop(history, answers, marks),
            ManoeuvreFamily.Hold => answers,
            ManoeuvreFamily.Push => Push(history, answers, marks),
            _ => Launch(history, answers, marks),
        };
    }

    private static RunAnswers Launch(RunHistory history, RunAnswers answers, List<Mark> marks)
    {
        Series speed = history.Trace.Body.Speed;
        double start = FirstCommand(history);
        int top = speed.Values.IndexOf(speed.Max());
        int reached = speed.FindIndex(v => v >= 0.9 * speed[top]);
        if (speed[top] < LeastSpeed)
        {
            return answers with { TopSpeed = speed[top] };
        }

        marks.Add(new Mark(MarkKind.Near, history.Time[reached], speed[reached]));
        marks.Add(new Mark(MarkKind.TopSpeed, history.Time[top], speed[top]));
        int from = history.IndexAt(start);
        return answers with
        {
            TopSpeed = speed[top],
            TimeTo90PercentSpeed = Math.Max(0.0, history.Time[reached] - start),
            TimeToOneMetre = TimeToWay(history, from, 1.0) - start,
            Binding = Bound(history, from, Math.Max(from, reached)),
        };
    }

    // When the robot is so far from where it was at a sample, by a straight line between samples [s]; null if it never is.
    private static double? TimeToWay(RunHistory history, int from, double way)
    {
        (Series x, Series y) = (history.Trace.Body.X, history.Trace.Body.Y);
        double Way(int i) => double.Hypot(x[i] - x[from], y[i] - y[from]);
        int there = from + 1;
        while (there < x.Length && Way(there) < way)
        {
            there++;
        }

        return there >= x.Length ? null : history.Time[there] - ((history.Time[there] - history.Time[there - 1]) * (Way(there) - way) / (Way(there) - Way(there - 1)));
    }

    private static RunAnswers Push(RunHistory history, RunAnswers answers, List<Mark> marks)
    {
        // the opponent's trace has no contact of its own: its push is the first robot's
        if (history.Trace.Contact is not { } contact)
        {
            return answers;
        }

        int touch = contact.Force.FindIndex(f => f > 0.0);
        if (touch < 0)
        {
            return answers;
        }

        int last = history.Time.Length - 1;
        int from = history.IndexAt(history.Time[last] - (SettledShare * (history.Time[last] - history.Time[touch])));
        marks.Add(new Mark(MarkKind.Touch, history.Time[touch], double.NaN));

        // the way the robot faces, since both may have turned far from the floor's axis along which they met
        double[] forwards = [.. history.Trace.Body.Heading.Select((h, i) => (Math.Cos(h) * contact.Push[i]) + (Math.Sin(h) * contact.SideForce[i]))];
        return answers with { PushPeak = forwards.Max(), PushPlateau = RunHistory.Mean(forwards, from, last) };
    }

    private static RunAnswers Stop(RunHistory history, RunAnswers answers, List<Mark> marks)
    {
        Series speed = history.Trace.Body.Speed;
        answers = Launch(history, answers, []);
        double command = history.Scenario.Manoeuvre.Commands.Count > 0 ? history.Scenario.Manoeuvre.Commands[^1].Time : 0.0;
        int from = history.IndexAt(command);
        marks.Add(new Mark(MarkKind.Command, command, double.NaN));
        int stop = speed.FindIndex(v => v <= 0.0, from);
        if (stop < 0)
        {
            return answers;
        }

        marks.Add(new Mark(MarkKind.Standstill, history.Time[stop], 0.0));
        (Series x, Series y) = (history.Trace.Body.X, history.Trace.Body.Y);
        return answers with
        {
            StopDistance = double.Hypot(x[stop] - x[from], y[stop] - y[from]),
            Binding = Bound(history, from, stop),
        };
    }

    private static RunAnswers Pull(RunHistory history, RunAnswers answers, List<Mark> marks)
    {
        if (TetherPull.Of(history) is not { } pull)
        {
            return answers;
        }

        int last = history.Time.Length - 1;
        if (pull.LetGo is var (sample, force))
        {
            marks.Add(new Mark(MarkKind.Breakaway, history.Time[sample], force));
        }

        if (pull.Jerk is { } jerk)
        {
            marks.Add(new Mark(MarkKind.Jerk, history.Time[pull.JerkSample], jerk.Force));
        }

        marks.Add(new Mark(MarkKind.PlateauStart, history.Time[pull.From], pull.Plateau));
        marks.Add(new Mark(MarkKind.PlateauEnd, history.Time[last], pull.Plateau));
        return answers with
        {
            PullBreakaway = pull.LetGo?.Force,
            PullJerk = pull.Jerk,
            PullPlateau = pull.Plateau,
            IsBouncing = TetherPull.Bounces(history.Time, history.Trace.Tether!.Force) is not null,
            Binding = history.Scenario.Manoeuvre.Traits.IsDragged ? BindingShares.Of(BindingKind.Tyre) : Bound(history, pull.From, last),
        };
    }

    private static RunAnswers Turn(RunHistory history, RunAnswers answers, List<Mark> marks)
    {
        int last = history.Time.Length - 1;
        int from = SettledFrom(history);
        double rate = history.Trace.Body.YawRate.Mean(from, last);
        double scrub = history.Trace.Body.ScrubMoment.Mean(from, last);
        marks.Add(new Mark(MarkKind.Settled, history.Time[from], rate));
        return answers with
        {
            YawRate = rate,
            TurnCurrent = history.Trace.Battery?.Current.Mean(from, last),
            ScrubMoment = -Math.Sign(rate) * scrub,
            EffectiveTrackRatio = Math.Abs(rate) > LeastYawRate && Sides(history, from, last) is var (difference, track) ? difference / (rate * track) : null,
            Binding = Math.Abs(rate) > LeastYawRate ? null : Bound(history, from, last),
        };
    }

    /// <summary>Surface speed of the driven wheels on the right less that on the left [m/s] and the track between them [m], means over a window; null unless both sides are driven.
    /// Wheels that only roll along are left out: they turn as the robot does and would hide its scrub.</summary>
    public static (double Difference, double Track)? Sides(RunHistory history, int from, int last)
    {
        IReadOnlyList<int> driven = history.Robot.DrivenWheels;
        (double Speed, double Y, int Count) left = default;
        (double Speed, double Y, int Count) right = default;
        foreach (int i in driven.Order())
        {
            double speed = history.Trace.Wheels[i].SurfaceSpeed.Mean(from, last);
            double y = history.Robot.Wheels[i].Y - history.Robot.Chassis.CentreOfMassY;
            ref var side = ref y > 0.0 ? ref left : ref right;
            side = (side.Speed + speed, side.Y + y, side.Count + 1);
        }

        return left.Count == 0 || right.Count == 0 ? null
            : ((right.Speed / right.Count) - (left.Speed / left.Count), (left.Y / left.Count) - (right.Y / right.Count));
    }

    /// <summary>What bound the driven wheels over samples from..to; null where nothing was commanded.</summary>
    public static BindingShares? Bound(RunHistory history, int from, int to) => BindingSpans.Over(history.Time, history.DrivenBindings, from, to);

    /// <summary>Number of the first sample of the settled part since the first command.</summary>
    public static int SettledFrom(RunHistory history)
    {
        double end = history.Time[^1];
        return history.IndexAt(end - (SettledShare * (end - FirstCommand(history))));
    }

    /// <summary>When the first command that is not zero comes, or begins to build up [s]; 0 without one.</summary>
    public static double FirstCommand(RunHistory history) => history.Scenario.Manoeuvre.FirstCommand ?? 0.0;

    private static double? TotalWear(Trace trace)
    {
        Series[] wear = [.. trace.Wheels.Select(w => w.Wear).OfType<Series>()];
        return wear.Length == 0 ? null : wear.Sum(w => w[^1]);
    }

    private static double? WearPerWork(Trace trace)
    {
        double work = trace.Wheels.Where(w => w.Wear is not null).Sum(w => w.FrictionWork?[^1] ?? 0.0);
        return work > 0.0 ? TotalWear(trace) / work : null;
    }

    private static double Travel(BodyTrace body) =>
        body.X.Zip(body.Y).Max(p => double.Hypot(p.First - body.X[0], p.Second - body.Y[0]));
}
