using PushSim.Binding;
using PushSim.Plotting.Drawing;
using PushSim.Simulation;
using PushSim.Words.Runs;

namespace PushSim.Plotting.Plots;

/// <summary>Panels of a shove and of a push on a wall.</summary>
internal static class ShovePanels
{
    // Limits that have a line whether or not a push meets them.
    private static readonly BindingKind[] s_usual = [BindingKind.Nothing, BindingKind.Tyre, BindingKind.CurrentLimit, BindingKind.Motor];

    // A push sideways that is no more of the push along the floor is nothing to look at [1].
    private const double LeastSideways = 1e-3;

    // Share of the samples at either end that a picture of forces may leave out [1].
    private const double CutShare = 0.03;

    public static IReadOnlyList<Panel> Shove(RunResult r)
    {
        OpponentRun other = r.Opponent!;
        string own = r.Scenario.Robot.Name;
        string name = other.Robot.Name;
        double[] mirrored = [.. other.Trace.Body.X.Select(x => -x)];
        Panel place = Panel.OverTime("Place of each robot along the floor", "Place [m]").Add(r.Time, r.Trace.Body.X, own).Add(r.Time, mirrored, name).OfRobots();
        foreach (MapLine line in Lines(r))
        {
            place.MarkLine(line.X, line.Words, line.Robot);
        }

        MarkGround(r, place);
        Panel push = Push(r);
        Panel ownSlip = RunPanels.Slip(r.Trace, $"Slip of each tread of {own}");
        Panel otherSlip = RunPanels.Slip(other.Trace, $"Slip of each tread of {name}");
        Panel ownLoad = RunPanels.Load(r.Trace, $"Load on each wheel of {own}");
        Panel otherLoad = RunPanels.Load(other.Trace, $"Load on each wheel of {name}");

        // what decides first; single wheels last
        List<Panel> panels = [place, TopView(r), push, Limits(r)];
        if (r.Trace.Battery is { } battery && other.Trace.Battery is { } others)
        {
            panels.Add(Panel.OverTime("Battery currents", "Current [A]").Add(r.Time, battery.Current, own).Add(r.Time, others.Current, name).OfRobots());
        }

        return [.. panels, ownSlip, otherSlip, ownLoad, otherLoad];
    }

    public static IReadOnlyList<Panel> WallPush(RunResult r)
    {
        Panel slip = RunPanels.Slip(r.Trace);
        Panel load = RunPanels.Load(r.Trace);
        List<Panel> panels = [Push(r), Limits(r)];
        RunPanels.AddCurrents(r, panels);
        MotorTrace[] heated = [.. r.Trace.Motors.Where(m => m.WindingTemperature is not null)];
        if (heated.Length > 0)
        {
            Panel panel = Panel.OverTime("Winding temperatures", "Temperature [°C]");
            foreach (MotorTrace motor in heated)
            {
                panel.Add(r.Time, motor.WindingTemperature!, motor.Name);
            }

            panels.Add(panel);
        }

        return [.. panels, slip, load];
    }

    private static Panel Push(RunResult r)
    {
        (Series along, Series across) = (r.Trace.Contact!.Push, r.Trace.Contact.SideForce);
        double peak = along.Max();
        (double low, double high) = Range(along, across);
        bool isCut = peak > high;
        string title = isCut ? FormattableString.Invariant($"Push at the contact (impacts up to {peak:0} N are cut off)") : "Push at the contact";
        Panel push = Panel.OverTime(title, "Force [N]").AddEnvelope(r.Time, along, "along the floor");
        push = across.Max(Math.Abs) < LeastSideways * along.Max(Math.Abs) ? push : push.AddEnvelope(r.Time, across, "sideways");
        MarkTouch(r, push);
        return isCut ? push.WithRange(low, high) : push;
    }

    // An impact is a hundred times the push that decides: leave out the largest few per cent of the samples that touch.
    private static (double Low, double High) Range(Series along, Series across)
    {
        double[] touching = [.. along.Concat(across).Where(f => f != 0.0).Order()];
        if (touching.Length == 0)
        {
            return (0.0, double.PositiveInfinity);
        }

        double low = Math.Min(0.0, touching[(int)(CutShare * (touching.Length - 1))]);
        double high = Math.Max(0.0, touching[(int)((1.0 - CutShare) * (touching.Length - 1))]);
        double margin = 0.3 * Math.Max(high - low, 1e-3);
        return (low - margin, high + margin);
    }

    // the line that the loser crosses or comes nearest to; both where nobody wins
    private static IEnumerable<MapLine> Lines(RunResult r)
    {
        double line = r.Scenario.Shove.Line;
        int winner = r.Shove?.Winner ?? -1;
        if (winner != 0 && r.Shove?.IsFarLine != true)
        {
            yield return new MapLine($"line of {r.Scenario.Robot.Name}", 0, r.Trace.Body.X[0] - line);
        }

        if (winner != 1 && r.Shove?.IsFarLine != true)
        {
            yield return new MapLine($"line of {r.Opponent!.Robot.Name}", 1, line - r.Opponent.Trace.Body.X[0]);
        }
    }

    private static void MarkGround(RunResult r, Panel place)
    {
        if (r.Shove is not { Winner: >= 0 } shove)
        {
            MarkTouch(r, place);
            return;
        }

        string[] names = [r.Scenario.Robot.Name, r.Opponent!.Robot.Name];
        if (shove.GivesGroundAt is double at && shove.Ending != ShoveEnding.Tips)
        {
            place.MarkTime(at, FormattableString.Invariant($"{names[1 - shove.Winner]} gives ground, {at:0.00} s"));
        }

        place.MarkTime(shove.EndTime, FormattableString.Invariant($"{names[shove.Winner]} wins, {shove.EndTime:0.00} s"));
    }

    private static void MarkTouch(RunResult r, Panel panel)
    {
        foreach (Mark mark in r.Marks.Where(m => m.Kind == MarkKind.Touch))
        {
            panel.MarkTime(mark.Time, RecordWords.Mark(mark.Kind));
        }
    }

    private static Panel Limits(RunResult r)
    {
        IReadOnlyList<BindingSpan> others = r.Opponent?.Limits ?? [];
        BindingKind[] kinds = [.. r.Limits.Concat(others).Select(s => s.Kinds[0]).Concat(s_usual).Distinct().Order()];
        Panel panel = Panel.OverTime("What limits each push", "").WithWords([.. kinds.Select(BindingTable.Short)]).OfRobots();
        panel.AddSteps(Steps(r.Limits, kinds), r.Scenario.Robot.Name, 0.06);
        if (r.Opponent is not null)
        {
            panel.AddSteps(Steps(others, kinds), r.Opponent.Robot.Name, -0.06);
        }

        return panel;
    }

    private static IEnumerable<(double X, double Y)> Steps(IReadOnlyList<BindingSpan> spans, BindingKind[] kinds) =>
        spans.SelectMany(s => new[] { (s.From, (double)Array.IndexOf(kinds, s.Kinds[0])), (s.To, (double)Array.IndexOf(kinds, s.Kinds[0])) });

    private static Panel TopView(RunResult r)
    {
        (string Name, int Sample)[] moments = TopMoments(r);
        OpponentRun o = r.Opponent!;
        return new Panel($"From above: {string.Join(", ", moments.Select(m => m.Name))}", "x [m]", "").WithStrips(
            [.. moments.Select(m => new MapStrip(m.Name, [Shape(r.Scenario.Robot, r.Trace.Body, 0, m.Sample), Shape(o.Robot, o.Trace.Body, 1, m.Sample)]))], [.. Lines(r)]);
    }

    // Moments of one sample are one; without a touch there is only start and end.
    private static (string Name, int Sample)[] TopMoments(RunResult r)
    {
        double end = r.Time[^1];
        (string Name, double Time)[] all = r.Shove?.FirstContact is double touch
            ? [("start", 0.0), ("first touch", touch), ("half-way", 0.5 * (touch + end)), ("end", end)]
            : [("start", 0.0), ("end", end)];
        return
        [
            .. all.GroupBy(m => Math.Min(r.Time.Length - 1, (int)Math.Round(m.Time * r.Scenario.Numerics.SampleRate)))
                .Select(g => (FormattableString.Invariant($"{string.Join(" and ", g.Select(m => m.Name))} {r.Time[g.Key]:0.00} s"), g.Key)),
        ];
    }

    // its corners, an arrow head at the nose, and a stroke for each wheel; the opponent's own frame looks the other way
    private static MapShape Shape(RobotSettings robot, BodyTrace body, int number, int sample)
    {
        double frame = number == 0 ? 1.0 : -1.0;
        double front = robot.OutlineOrBox.Corners.Max(c => c.X);
        double a = 0.1 * robot.Chassis.Length;
        (double X, double Y)[][] lines = [[(front - (1.6 * a), a), (front - (0.4 * a), 0.0), (front - (1.6 * a), -a)], .. robot.Wheels.Select(w => new[] { (w.X - (0.7 * w.Radius), w.Y), (w.X + (0.7 * w.Radius), w.Y) })];
        (double sin, double cos) = Math.SinCos(body.Heading[sample]);
        return new MapShape(
            robot.Name, number,
            [.. new StartPose(body.X[sample], body.Y[sample], body.Heading[sample]).Corners(robot).Select(c => (frame * c.X, frame * c.Y))],
            [.. lines.Select(l => l.Select(p => (p.X - robot.Chassis.CentreOfMassX, p.Y - robot.Chassis.CentreOfMassY)).Select(p => (frame * (body.X[sample] + (p.Item1 * cos) - (p.Item2 * sin)), frame * (body.Y[sample] + (p.Item1 * sin) + (p.Item2 * cos)))).ToArray())]);
    }
}
