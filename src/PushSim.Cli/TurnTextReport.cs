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

    private static Table WheelTable(TurnReport r)
    {
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("Wheel");
        foreach (string name in new[] { "load N", "least N", "in the air", "drive N", "scrub N", "scrub moment N m", "slip m/s", "swing N", "chatter Hz" })
        {
            table.AddColumn(new TableColumn(name).RightAligned());
        }

        foreach (WheelTurn w in r.Wheels)
        {
            table.AddRow(
                Markup.Escape(PlainText.Of(w.Wheel)), F(w.Load, "0.00"), F(w.LeastLoad, "0.00"), F(100.0 * w.AirShare, "0.0") + " %", F(w.DriveForce, "0.00"), F(w.ScrubForce, "0.00"),
                F(w.ScrubMoment, "0.000"), F(w.SlipSpeed, "0.00"), F(w.Swing, "0.00"), w.Frequency is { } hz ? F(hz, "0") : "quiet");
        }

        return table;
    }

    private static IEnumerable<string> Lines(TurnReport r)
    {
        yield return Text($"takes {r.Current:0.00} A and {r.Power:0.0} W from the battery; its wheels would turn it at {r.YawRateWithoutSlip:0.00} rad/s if nothing slipped");
        if (r.RotationCentre is { } c)
        {
            yield return Text($"turns about a point {1e3 * c.X:0} mm ahead of and {1e3 * c.Y:0} mm left of its centre of mass");
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

    // the slowest to die of each kind
    private static Table ModeTable(TurnReport r)
    {
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("Small swings of the steady turn").AddColumn(new TableColumn("Hz").RightAligned())
            .AddColumn(new TableColumn("growth 1/s").RightAligned()).AddColumn("what moves");
        foreach (TurnMode m in r.Modes.GroupBy(m => m.Part).Select(g => g.First()))
        {
            table.AddRow(m.Name, F(m.Frequency, "0.0"), F(m.Growth, "0.0"), string.Join(", ", m.Shares.Take(3).Select(s => Text($"{TurnMode.Words(s.Part)} {100.0 * s.Share:0} %"))));
        }

        return table;
    }

    private static string Short(double value) => F(value, Math.Abs(value) >= 100.0 ? "0" : Math.Abs(value) >= 10.0 ? "0.0" : "0.00");

    private static string F(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
