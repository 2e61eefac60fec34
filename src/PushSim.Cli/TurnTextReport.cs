using System.Globalization;
using PushSim.Analysis.Turning;
using PushSim.Simulation;
using Spectre.Console;

namespace PushSim.Cli;

/// <summary>A turn as text for a person: each wheel, reserve, what would help, why it chatters or not.</summary>
internal static class TurnTextReport
{
    public static void Write(IAnsiConsole console, TurnReport r)
    {
        console.Write(WheelTable(r));
        foreach (string line in Lines(r))
        {
            console.MarkupLine(Markup.Escape(PlainText.Of(line)));
        }

        if (r.Helps.Count > 0)
        {
            console.Write(HelpTable(r));
        }

        if (r.Modes.Count > 0)
        {
            console.Write(ModeTable(r));
        }
        else
        {
            console.MarkupLine(Markup.Escape(PlainText.Of($"no modes of the steady turn: {r.NoModes}")));
        }

        foreach (string line in r.Explanation)
        {
            console.MarkupLine(Markup.Escape(PlainText.Of(line)));
        }
    }

    // One column a wheel: eight of them still fit a page.
    private static Table WheelTable(TurnReport r)
    {
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("Each wheel");
        foreach (WheelTurn w in r.Wheels)
        {
            table.AddColumn(new TableColumn(Markup.Escape(PlainText.Of(w.Wheel))).RightAligned());
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

        return table;

        void Row(string name, string unit, Func<WheelTurn, string> cell)
        {
            string[] cells = [name, .. r.Wheels.Select(cell), unit];
            table.AddRow(cells);
        }
    }

    private static IEnumerable<string> Lines(TurnReport r)
    {
        yield return Text($"takes {r.Current:0.00} A and {r.Power:0.0} W from the battery; its wheels would turn it at {r.YawRateWithoutSlip:0.00} rad/s if nothing slipped");
        if (r.RotationCentre is { } c)
        {
            yield return Text($"turns about a point {1e3 * Math.Abs(c.X):0} mm {(c.X < 0.0 ? "behind" : "ahead of")} and {1e3 * Math.Abs(c.Y):0} mm {(c.Y < 0.0 ? "right" : "left")} of its centre of mass");
        }

        yield return r.LeastCurrentLimit is { } ampere
            ? Text($"least current limit that turns it from rest: {ampere:0.0} A a controller ({100.0 * r.LeastCurrentShare!.Value:0} % of now)")
            : "no current limit would turn it";
        yield return r.LeastMotorShare is { } share
            ? Text($"least motors that turn it from rest: {100.0 * share:0} % of these motors' stall torque at the same no-load speed")
            : "no stronger motor alone would turn it";
    }

    private static Table HelpTable(TurnReport r)
    {
        bool turns = r.Ease != TurnEase.CannotTurn;
        Table table = new Table().Border(TableBorder.Minimal).AddColumn(turns ? "What a change would do" : "Least change that lets it turn")
            .AddColumn(new TableColumn("now").RightAligned()).AddColumn(new TableColumn("then").RightAligned()).AddColumn("unit")
            .AddColumn(new TableColumn("yaw rate rad/s").RightAligned()).AddColumn(new TableColumn("scrub N m").RightAligned()).AddColumn(new TableColumn("battery A").RightAligned());
        foreach (TurnHelp h in r.Helps)
        {
            table.AddRow(Markup.Escape(h.What), Short(h.From), Short(h.To), h.Unit, h.Turns ? F(Math.Abs(h.YawRate), "0.00") : "stands", F(h.ScrubMoment, "0.000"), F(h.Current, "0.00"));
        }

        return table;
    }

    // One a part: the slowest to die of those in which it moves most, else the one in which it moves more than in any other.
    private static Table ModeTable(TurnReport r)
    {
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("Swing of the turn").AddColumn(new TableColumn("Hz").RightAligned())
            .AddColumn(new TableColumn("growth 1/s").RightAligned()).AddColumn("what moves");
        IEnumerable<(TurnPart Part, TurnMode Mode)> rows = Enum.GetValues<TurnPart>()
            .Select(p => (p, r.Modes.FirstOrDefault(m => m.Part == p) ?? r.Modes.MaxBy(m => m.Shares.FirstOrDefault(s => s.Part == p).Share)!))
            .Where(m => m.Item2.Shares.Any(s => s.Part == m.p)).OrderByDescending(m => m.Item2.Growth);
        foreach ((TurnPart part, TurnMode m) in rows)
        {
            table.AddRow(TurnMode.Words(part), F(m.Frequency, "0.0"), F(m.Growth, "0.0"), string.Join(", ", m.Shares.Where(s => s.Share >= 0.1).Take(3).Select(s => Text($"{TurnMode.Words(s.Part)} {100.0 * s.Share:0} %"))));
        }

        return table;
    }

    private static string Short(double value) => F(value, Math.Abs(value) >= 100.0 ? "0" : Math.Abs(value) >= 10.0 ? "0.0" : "0.00");

    private static string F(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
