using System.Text.Encodings.Web;
using System.Text.Json;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;
using PushSim.Words.Runs;

namespace PushSim.Plotting.Report;

/// <summary>
/// The history that a page replays, as JSON: lengths in 0.01 mm, angles in 0.1 mrad, forces in 0.01 N, slip in mm/s, times in 10 µs,
/// all whole numbers to keep it short. Floor frame of the first robot: x along the floor, y to its left, from above.
/// </summary>
internal sealed class ReplayData
{
    private const double PerMetre = 1e5;
    private const double PerRadian = 1e4;
    private const double PerNewton = 1e2;
    private const double PerSlip = 1e3;
    private const double PerSecond = 1e5;

    // Load and force to which bars and arrow are drawn full: most samples stay below, an impact does not set the scale [1].
    private const double FullShare = 0.97;

    // Letters of the sentence at the end of a replay [1].
    private const int LongestEnd = 300;

    // Least load and force [N] and slip [m/s] that fill bars, arrow and colours, so that noise stays small.
    private const double LeastFull = 0.1;

    private readonly RunResult _result;
    private readonly ReplayFrames _frames;
    private readonly Utf8JsonWriter _json;

    private ReplayData(RunResult result, Utf8JsonWriter json) => (_result, _frames, _json) = (result, ReplayFrames.Of(result.Time.Length), json);

    /// <summary>The JSON text, safe inside a script element: the encoder escapes every angle bracket, ampersand and quote of a name.</summary>
    public static string Of(RunResult result)
    {
        using var memory = new MemoryStream();
        using (var json = new Utf8JsonWriter(memory, new JsonWriterOptions { Encoder = JavaScriptEncoder.Default }))
        {
            new ReplayData(result, json).Write();
        }

        return System.Text.Encoding.UTF8.GetString(memory.ToArray());
    }

    /// <summary>Slip at which a wheel has the last colour [m/s].</summary>
    public static double FullSlip(RunResult result)
    {
        IEnumerable<WheelTrace> all = result.Trace.Wheels.Concat(result.Opponent?.Trace.Wheels ?? []);
        return Math.Ceiling(10.0 * Full(all.SelectMany(w => w.SlipSpeed))) / 10.0;
    }

    private void Write()
    {
        _json.WriteStartObject();
        Number("fullSlip", FullSlip(_result), PerSlip);
        Numbers("t", _frames.Whole(_result.Time, PerSecond));
        _json.WriteStartArray("robots");
        WriteRobot(_result.Scenario.Robot, _result.Trace, 1.0);
        if (_result.Opponent is OpponentRun opponent)
        {
            WriteRobot(opponent.Robot, opponent.Trace, -1.0);
        }

        _json.WriteEndArray();
        WritePush();
        WriteTether();
        WriteFloor();
        WriteEvents();
        _json.WriteEndObject();
    }

    // the opponent's frame is the floor's turned by half a turn: turn it back
    private void WriteRobot(RobotSettings robot, Trace trace, double frame)
    {
        _json.WriteStartObject();
        _json.WriteString("name", PlainLabel.Of(robot.Name));
        _json.WriteStartArray("outline");
        foreach ((double x, double y) in robot.OutlineOrBox.Corners)
        {
            Pair(x - robot.Chassis.CentreOfMassX, y - robot.Chassis.CentreOfMassY);
        }

        _json.WriteEndArray();
        Numbers("x", _frames.Whole(trace.Body.X, frame * PerMetre));
        Numbers("y", _frames.Whole(trace.Body.Y, frame * PerMetre));
        Numbers("h", _frames.Whole(trace.Body.Heading, PerRadian, frame < 0.0 ? Math.PI : 0.0));
        Numbers("z", _frames.Whole(trace.Body.Heave, PerMetre));
        Numbers("p", _frames.Whole(trace.Body.Pitch, PerRadian));
        Number("com", robot.Chassis.CentreOfMassHeight, PerMetre);
        WriteSide(robot);
        _json.WriteStartArray("wheels");
        foreach ((WheelSettings wheel, WheelTrace wheelTrace) in robot.Wheels.Zip(trace.Wheels))
        {
            WriteWheel(robot, wheel, wheelTrace);
        }

        _json.WriteEndArray();
        Number("fullLoad", Full(trace.Wheels.SelectMany(w => w.Load)), PerNewton);
        _json.WriteEndObject();
    }

    private void WriteSide(RobotSettings robot)
    {
        _json.WriteStartArray("side");
        foreach ((double x, double z) in SideOutline.Of(robot))
        {
            Pair(x - robot.Chassis.CentreOfMassX, z - robot.Chassis.CentreOfMassHeight);
        }

        _json.WriteEndArray();
    }

    // moments worth a jump, in the robots' names
    private void WriteEvents()
    {
        _json.WriteStartArray("events");
        foreach ((double time, string words) in Events())
        {
            _json.WriteStartObject();
            _json.WriteNumber("t", (long)Math.Round(time * PerSecond));
            _json.WriteString("words", words);
            _json.WriteEndObject();
        }

        _json.WriteEndArray();
        _json.WriteString("end", PlainLabel.Of(RunCard.Answer(_result), LongestEnd));
    }

    private IEnumerable<(double Time, string Words)> Events()
    {
        if (_result.Shove is not { } shove)
        {
            return _result.Marks.GroupBy(m => m.Kind).Select(g => (g.First().Time, RecordWords.Mark(g.Key)));
        }

        string[] names = [PlainLabel.Of(_result.Scenario.Robot.Name), PlainLabel.Of(_result.Opponent!.Robot.Name)];
        List<(double, string)> events = [(0.0, "start")];
        if (shove.FirstContact is double touch)
        {
            events.Add((touch, "they touch"));
        }

        if (shove is { GivesGroundAt: double at, Winner: >= 0 } && shove.Ending != ShoveEnding.Tips)
        {
            events.Add((at, $"{names[1 - shove.Winner]} gives ground"));
        }

        events.Add((shove.EndTime, shove.Winner >= 0 ? $"{names[shove.Winner]} wins" : "no winner"));
        return events;
    }

    private void WriteWheel(RobotSettings robot, WheelSettings wheel, WheelTrace trace)
    {
        _json.WriteStartObject();
        _json.WriteString("name", PlainLabel.Of(wheel.Name));
        Number("x", wheel.X - robot.Chassis.CentreOfMassX, PerMetre);
        Number("y", wheel.Y - robot.Chassis.CentreOfMassY, PerMetre);
        Number("r", wheel.Radius, PerMetre);
        Numbers("slip", _frames.Whole(trace.SlipSpeed, PerSlip));
        Numbers("load", _frames.Whole(trace.Load, PerNewton));
        _json.WriteEndObject();
    }

    private void WritePush()
    {
        if (_result.Trace.Contact is not { } contact)
        {
            return;
        }

        _json.WriteStartObject("push");
        Numbers("x", _frames.Whole(contact.X, PerMetre));
        Numbers("y", _frames.Whole(contact.Y, PerMetre));
        Numbers("fx", _frames.Whole(contact.Push, PerNewton));
        Numbers("fy", _frames.Whole(contact.SideForce, PerNewton));
        Number("full", Full(contact.Push.Zip(contact.SideForce, double.Hypot).Where(f => f > 0.0).DefaultIfEmpty(0.0)), PerNewton);
        _json.WriteEndObject();
    }

    private void WriteTether()
    {
        if (_result.Scenario.Tether is not TetherSettings tether)
        {
            return;
        }

        double[] anchor = Anchor(tether);
        _json.WriteStartObject("tether");
        Number("hookX", tether.HookX - _result.Scenario.Robot.Chassis.CentreOfMassX, PerMetre);
        Number("hookY", tether.HookY - _result.Scenario.Robot.Chassis.CentreOfMassY, PerMetre);
        Numbers("x", _frames.Whole(anchor, PerMetre));
        Number("y", tether.AnchorY, PerMetre);
        Numbers("f", _frames.Whole(_result.Trace.Tether!.Force, PerNewton));
        _json.WriteEndObject();
    }

    // its speed is linear between samples but at the few corners, so the trapezoid rule is exact but there
    private double[] Anchor(TetherSettings tether)
    {
        double[] place = new double[_result.Time.Length];
        place[0] = tether.AnchorX;
        for (int i = 1; i < place.Length; i++)
        {
            double step = _result.Time[i] - _result.Time[i - 1];
            place[i] = place[i - 1] + (0.5 * step * (Speed(tether, _result.Time[i - 1]) + Speed(tether, _result.Time[i])));
        }

        return place;
    }

    private static double Speed(TetherSettings tether, double time)
    {
        IReadOnlyList<(double Time, double Speed)> points = tether.AnchorSpeed;
        if (points.Count == 0)
        {
            return 0.0;
        }

        for (int i = 1; i < points.Count; i++)
        {
            if (time < points[i].Time)
            {
                double share = Math.Clamp((time - points[i - 1].Time) / (points[i].Time - points[i - 1].Time), 0.0, 1.0);
                return points[i - 1].Speed + (share * (points[i].Speed - points[i - 1].Speed));
            }
        }

        return points[^1].Speed;
    }

    private void WriteFloor()
    {
        _json.WriteStartArray("walls");
        foreach (Contact.WallSettings wall in _result.Scenario.Walls)
        {
            Corners(wall.Corners());
        }

        _json.WriteEndArray();
        _json.WriteStartArray("patches");
        foreach (FloorPatch p in _result.Scenario.Floor.Patches)
        {
            Corners([(p.MinX, p.MinY), (p.MaxX, p.MinY), (p.MaxX, p.MaxY), (p.MinX, p.MaxY)]);
        }

        _json.WriteEndArray();
        _json.WriteStartArray("lines");
        if (_result.Opponent is OpponentRun opponent)
        {
            double line = _result.Scenario.Shove.Line;
            _json.WriteNumberValue((long)Math.Round((_result.Trace.Body.X[0] - line) * PerMetre));
            _json.WriteNumberValue((long)Math.Round((-opponent.Trace.Body.X[0] + line) * PerMetre));
        }

        _json.WriteEndArray();
    }

    private void Corners((double X, double Y)[] corners)
    {
        _json.WriteStartArray();
        foreach ((double x, double y) in corners)
        {
            Pair(x, y);
        }

        _json.WriteEndArray();
    }

    private static double Full(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return Math.Max(LeastFull, sorted[(int)(FullShare * (sorted.Length - 1))]);
    }

    private void Pair(double x, double y)
    {
        _json.WriteStartArray();
        _json.WriteNumberValue((long)Math.Round(x * PerMetre));
        _json.WriteNumberValue((long)Math.Round(y * PerMetre));
        _json.WriteEndArray();
    }

    private void Number(string key, double value, double perUnit) => _json.WriteNumber(key, (long)Math.Round(value * perUnit));

    private void Numbers(string key, IEnumerable<long> values)
    {
        _json.WriteStartArray(key);
        foreach (long value in values)
        {
            _json.WriteNumberValue(value);
        }

        _json.WriteEndArray();
    }
}
