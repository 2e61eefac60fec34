using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Scenes;

/// <summary>The manoeuvre of a scenario: the timeline that its kind is short for.</summary>
internal static class ManoeuvreReader
{
    // When a command comes that says no start [s].
    private const double DefaultStart = 0.1;

    // When a shove or wall push ends that says no end [s].
    private const double DefaultShoveTime = 3.0;

    /// <summary>The manoeuvre; null without a kind that is known, complained about then.</summary>
    public static ManoeuvreSettings? Read(Section s)
    {
        int index = s.Choice("kind");
        ManoeuvreWord? kind = index < 0 ? null : ManoeuvreWord.All[index];
        double end = End(s, kind);
        ManoeuvreSettings driven = Driven(s, kind?.Kind);
        if (kind is null)
        {
            return null;
        }

        bool hasPoints = kind.Takes("points") && (s.Has("points") || !kind.Takes("start"));
        foreach (string key in ManoeuvreWord.Optional.Where(k => s.Has(k) && !kind.Takes(k)))
        {
            s.Context.Warning(s.PlaceOf(key), $"\"{key}\" has no effect in this kind of manoeuvre", "take it out");
        }

        if (hasPoints)
        {
            WarnBesidePoints(s, kind);
        }

        List<CommandPoint> commands = hasPoints ? Points(s) : Commands(s, kind, end);
        if (commands.Count > 0 && commands[^1].Time >= end)
        {
            s.Context.Error(s.PlaceOf("end"), FormattableString.Invariant($"the run ends at {end:G4} s, before or with its last command at {commands[^1].Time:G4} s"), "put end later");
        }

        return driven with { Kind = kind.Kind, Commands = commands, EndTime = end };
    }

    /// <summary>What an opponent does; kind and end are those of the scenario.</summary>
    public static ManoeuvreSettings ReadOpponent(Section s, ManoeuvreSettings own)
    {
        ManoeuvreWord kind = ManoeuvreWord.Of(ManoeuvreKind.Shove);
        bool hasPoints = s.Has("points");
        if (hasPoints)
        {
            WarnBesidePoints(s, kind);
        }

        List<CommandPoint> commands = hasPoints ? Points(s) : Commands(s, kind, own.EndTime);
        if (commands.Count > 0 && commands[^1].Time >= own.EndTime)
        {
            s.Context.Warning(s.PlaceOf(hasPoints ? "points" : "start"), FormattableString.Invariant($"the opponent's last command comes at {commands[^1].Time:G4} s, but the run ends at {own.EndTime:G4} s"), "put end of [manoeuvre] later, or the command earlier");
        }

        return Driven(s, own.Kind) with { Kind = own.Kind, Commands = commands, EndTime = own.EndTime };
    }

    // What else could say the commands, where points say them.
    private static void WarnBesidePoints(Section s, ManoeuvreWord kind)
    {
        foreach (string key in ManoeuvreWord.ShortKeys.Where(k => kind.Takes(k) && s.Has(k)))
        {
            s.Context.Warning(s.PlaceOf(key), $"\"{key}\" has no effect beside \"points\"", "take one of the two out");
        }
    }

    // Drivers steer a little in a shove, and have nobody to steer to elsewhere
    private static ManoeuvreSettings Driven(Section s, ManoeuvreKind? kind)
    {
        ManoeuvreSettings manoeuvre = s.Fill(Blank.Manoeuvre);
        DriverSettings usual = kind == ManoeuvreKind.Shove ? Blank.Driver with { Steering = DriverSettings.ModestSteering } : Blank.Driver;
        return manoeuvre with { Driver = s.Table(RenamedKeys.Table)?.Fill(usual) ?? usual };
    }

    private static double End(Section s, ManoeuvreWord? kind)
    {
        if (!s.Has("end") && kind is not null && kind.Traits.Family != ManoeuvreFamily.Push)
        {
            s.Missing(["end"], "missing \"end\" in manoeuvre", $"add end = \"2 s\" (when the run ends; only a {ManoeuvreWord.Names(w => w.Traits.Family == ManoeuvreFamily.Push)} has one of its own, 3 s)");
        }

        return s.Or("end", DefaultShoveTime);
    }

    private static List<CommandPoint> Commands(Section s, ManoeuvreWord kind, double end)
    {
        if (!kind.Takes("start"))
        {
            return [];
        }

        double start = s.Or("start", DefaultStart);
        double ramp = s.Or("ramp", 0.0);
        double? throttle = kind.Takes("throttle") ? s.Number("throttle") : null;
        double? turn = s.Number("turn");
        if (turn is null && kind.Traits.Family == ManoeuvreFamily.Turn && !s.Has("turn"))
        {
            s.Missing(["turn"], "missing \"turn\" in manoeuvre", "add turn = 0.5 (positive turns left)");
        }

        List<CommandPoint> points = [];
        var first = new CommandPoint(0.0, throttle ?? kind.Throttle, turn ?? 0.0);
        Add(points, start, ramp, first);
        if (kind.Second is { } next)
        {
            double? second = s.Number("reverse_at");
            if (second is null)
            {
                s.Missing(["reverse_at"], "missing \"reverse_at\" in manoeuvre", "add reverse_at = \"1.2 s\", when the second command comes");
            }
            else if (second <= start + ramp || second >= end)
            {
                s.Context.Error(s.PlaceOf("reverse_at"), FormattableString.Invariant($"\"reverse_at\" is {second:G4} s, not between the first command ({start + ramp:G4} s) and the end ({end:G4} s)"), "move it between the two");
            }
            else
            {
                Add(points, second.Value, ramp, next(first));
            }
        }

        return points;
    }

    // A jump, or a straight rise from the command that held until then.
    private static void Add(List<CommandPoint> points, double time, double ramp, CommandPoint to)
    {
        if (ramp > 0.0)
        {
            CommandPoint before = points.Count > 0 ? points[^1] : new CommandPoint(0.0, 0.0, 0.0);
            points.Add(before with { Time = time, Ramp = false });
        }

        points.Add(to with { Time = time + ramp, Ramp = ramp > 0.0 });
    }

    private static List<CommandPoint> Points(Section s)
    {
        List<CommandPoint> points = [];
        foreach (Section p in s.Tables("points"))
        {
            CommandPoint point = p.Fill(Blank.Point);
            if (points.Count > 0 && point.Time <= points[^1].Time)
            {
                s.Context.Error(p.PlaceOf("time"), "the times of \"points\" must rise", "put the points in rising time, no time twice");
            }

            points.Add(point);
        }

        if (points.Count == 0 && !s.Has("points"))
        {
            s.Missing(["points"], "missing \"points\" in manoeuvre", "add points = [{ time = \"0.1 s\", throttle = 1.0 }]");
        }

        return points;
    }
}
