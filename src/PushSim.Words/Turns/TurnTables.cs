using PushSim.Words.Tables;

namespace PushSim.Words.Turns;

/// <summary>A turn in tables for screen and page: each wheel, reserve, what would help, why it chatters or not.</summary>
public static class TurnTables
{
    // A centre of rotation nearer than this is the centre of mass itself [m].
    private const double SeenOffset = 5e-4;

    /// <summary>The tables; none where nothing was looked at.</summary>
    public static IEnumerable<AnswerTable> Of(RunResult run)
    {
        if (run.Turning is not TurnResult r)
        {
            yield break;
        }

        yield return WheelTable(r, run);
        if (r.Helps.Count > 0)
        {
            yield return HelpTable(r);
        }

        yield return ModeTable(r, TurnExplanation.Of(r, run));
    }

    // One column a wheel: eight of them still fit a page.
    private static AnswerTable WheelTable(TurnResult r, RunResult run)
    {
        AnswerTable table = new AnswerTable("Each wheel") { IsFolded = true }.AddColumn("Quantity");
        foreach (WheelTurn w in r.Wheels)
        {
            table.AddNumberColumn(w.Wheel);
        }

        table.AddColumn("Unit");
        Row("load", "N", w => F(w.Load, "0.00"));
        Row("least load", "N", w => F(w.LeastLoad, "0.00"));
        Row("off the floor", "%", w => F(100.0 * w.AirShare, "0.0"));
        Row("drive force", "N", w => F(w.DriveForce, "0.00"));
        Row("scrub force, to the left", "N", w => F(w.ScrubForce, "0.00"));
        Row("scrub moment", "N m", w => F(w.ScrubMoment, "0.000"));
        Row("slip", "m/s", w => F(w.SlipSpeed, "0.00"));
        Row("swing of the force", "N", w => F(w.Swing, "0.00"));
        Row("chatter", "Hz", w => w.Frequency is { } hz ? F(hz, "0") : "quiet");
        if (r.Wheels.Any(w => w.Wear is not null))
        {
            Row("wear", "mm³", w => w.Wear is { } v ? F(1e9 * v, "0.000") : "");
        }

        table.AddRemarks(Lines(r, run.Look?.LeftOut ?? []));

        return table;

        void Row(string name, string unit, Func<WheelTurn, string> cell)
        {
            string[] cells = [name, .. r.Wheels.Select(cell), unit];
            table.AddRow(cells);
        }
    }

    private static IEnumerable<string> Lines(TurnResult r, IReadOnlyList<LookPart> leftOut)
    {
        yield return Text($"takes {r.Current:0.00} A and {r.Power:0.0} W from the battery; its wheels would turn it at {r.YawRateWithoutSlip:0.00} rad/s if nothing slipped");
        if (r.RotationCentre is { } c)
        {
            yield return Math.Max(Math.Abs(c.X), Math.Abs(c.Y)) < SeenOffset ? "turns about its centre of mass" : Text($"turns about a point {1e3 * Math.Abs(c.X):0} mm {(c.X < 0.0 ? "behind" : "ahead of")} and {1e3 * Math.Abs(c.Y):0} mm {(c.Y < 0.0 ? "right" : "left")} of its centre of mass");
        }

        if (r.LeastCurrentLimit is { } ampere)
        {
            yield return Text($"least current limit that turns it from rest: {ampere:0.0} A a controller ({100.0 * r.LeastCurrentShare!.Value:0} % of now)");
        }
        else if (!leftOut.Contains(LookPart.LeastCurrent))
        {
            yield return "no current limit would turn it";
        }

        if (r.LeastMotorShare is { } share)
        {
            yield return Text($"least motors that turn it from rest: {100.0 * share:0} % of these motors' stall torque at the same no-load speed");
        }
        else if (!leftOut.Contains(LookPart.LeastMotor))
        {
            yield return "no stronger motor alone would turn it";
        }
    }

    private static AnswerTable HelpTable(TurnResult r)
    {
        bool turns = r.Ease != TurnEase.CannotTurn;
        AnswerTable table = new AnswerTable(turns ? "What a change would do" : "Least change that lets it turn").AddColumn("Change")
            .AddNumberColumn("now").AddNumberColumn("then").AddColumn("unit").AddNumberColumn("yaw rate rad/s").AddNumberColumn("scrub N m").AddNumberColumn("battery A");
        foreach (TurnHelp h in r.Helps)
        {
            table.AddRow(TurnWords.Of(h.What), TurnWords.Number(h.From), TurnWords.Number(h.To), TurnWords.Unit(h.What), h.Turns ? F(Math.Abs(h.YawRate), "0.00") : "stands", F(h.ScrubMoment, "0.000"), F(h.Current, "0.00"));
        }

        return table;
    }

    // For each part the slowest to die of those in which it moves most, else the one in which it moves more than in any other; each once.
    private static AnswerTable ModeTable(TurnResult r, IReadOnlyList<string> explanation)
    {
        AnswerTable table = new AnswerTable("Swing of the turn") { IsFolded = true }.AddColumn("Part").AddNumberColumn("Hz").AddNumberColumn("growth 1/s").AddColumn("what moves");
        if (r.Modes.Count == 0)
        {
            table.AddRemark($"no modes of the steady turn: {ChatterWords.Of(r.NoModes)}");
        }

        table.AddRemarks(explanation);

        IEnumerable<IGrouping<TurnMode, TurnPart>> rows = r.Modes.Count == 0 ? [] : Enum.GetValues<TurnPart>()
            .Select(p => (Part: p, Mode: r.Modes.FirstOrDefault(m => m.Part == p) ?? r.Modes.MaxBy(m => m.Shares.FirstOrDefault(s => s.Part == p).Share)!))
            .Where(x => x.Mode.Shares.Any(s => s.Part == x.Part)).GroupBy(x => x.Mode, x => x.Part).OrderByDescending(g => g.Key.Growth);
        foreach (IGrouping<TurnMode, TurnPart> row in rows)
        {
            TurnMode m = row.Key;
            string others = string.Join(" and ", row.Where(p => p != m.Part).Select(TurnWords.Of));
            table.AddRow(TurnWords.Of(m.Part) + (others.Length > 0 ? " with " + others : ""), F(m.Frequency, "0.0"), F(m.Growth, "0.0"), string.Join(", ", m.Shares.Where(s => s.Share >= 0.1).Take(3).Select(s => Text($"{TurnWords.Of(s.Part)} {100.0 * s.Share:0} %"))));
        }

        return table;
    }

    private static string F(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
