using PushSim.Analysis.Chance;
using PushSim.Surroundings;
using PushSim.Words.Tables;

namespace PushSim.Words.Matches;

/// <summary>What all matches of a ladder have in common, in one sentence: floor, start, drivers, rule, each with the tolerance from which it is drawn.</summary>
public sealed class MatchSettingWords
{
    private readonly ScenarioSettings _match;
    private readonly ManoeuvreSettings _other;
    private readonly IReadOnlyDictionary<string, (double Middle, double Tolerance, DrawShape Shape)> _drawn;

    private MatchSettingWords(ScenarioSettings match, IReadOnlyDictionary<string, (double Middle, double Tolerance, DrawShape Shape)> drawn) =>
        (_match, _other, _drawn) = (match, match.Opponent!.Manoeuvre, drawn);

    /// <summary>The sentence, with where to change it.</summary>
    /// <param name="match">Any of the pairs.</param>
    /// <param name="drawn">Middle and tolerance of each value of the scene that is drawn, by its key.</param>
    /// <param name="scene">Name of the scenario file that it comes from; null for none.</param>
    public static string Of(ScenarioSettings match, IReadOnlyDictionary<string, (double Middle, double Tolerance, DrawShape Shape)> drawn, string? scene)
    {
        var words = new MatchSettingWords(match, drawn);
        string from = scene is null ? "" : $" (from {scene})";
        string change = scene is null ? "; another floor, start or driver: --scene FILE (pushsim new --kind shove writes one)" : "";
        return $"every match{from}: {words.Floor()}; {words.Start()}; {words.Drivers()}; {words.Rule()}{change}.";
    }

    private string Floor()
    {
        FloorSettings floor = _match.Floor;
        string slope = floor.SlopeX == 0.0 && floor.SlopeY == 0.0 ? "" : $", sloping {Degrees("floor.slope_x", floor.SlopeX)} and {Degrees("floor.slope_y", floor.SlopeY)} deg";
        string patches = floor.Patches.Count > 0 ? $", {floor.Patches.Count} patches" : "";
        return $"floor friction {Value("floor.friction", floor.FrictionScale)} times that of the tyres' files{Unless(", dust ", "floor.dust", floor.Dust)}{slope}{patches}";
    }

    private string Start()
    {
        ShoveSettings s = _match.Shove;
        (double own, double other) = (_match.Manoeuvre.InitialSpeed, _other.InitialSpeed);
        string speed = own == 0.0 && other == 0.0 ? "" : $", moving at {Value("manoeuvre.initial_speed", own)} and {Value("opponent.initial_speed", other)} m/s";
        string headings = Both(Degrees("manoeuvre.heading", _match.Manoeuvre.InitialHeading), Degrees("opponent.heading", _other.InitialHeading));
        return $"noses {Value("shove.gap", s.Gap, 1e3)} mm apart{Unless(", off centre by ", "shove.offset", s.Offset, 1e3, " mm")}{(headings == "0" ? "" : $", headings off by {headings} deg")}{speed}";
    }

    private string Drivers()
    {
        (ManoeuvreSettings own, ManoeuvreSettings other) = (_match.Manoeuvre, _other);
        string throttle = Both(Value("manoeuvre.throttle", own.GreatestThrottle, 100.0), Value("opponent.throttle", other.GreatestThrottle, 100.0));
        string reaction = Both(Value("manoeuvre.driver.reaction", own.Driver.ReactionDelay), Value("opponent.driver.reaction", other.Driver.ReactionDelay));
        return $"{throttle} % throttle, {(reaction == "0" ? "no reaction time" : $"reaction time {reaction} s")}";
    }

    private string Rule() =>
        $"lost when pushed back {Value("shove.line", _match.Shove.Line)} m, after {Value("manoeuvre.end", _match.Manoeuvre.EndTime)} s won by {Value("shove.deciding_ground", _match.Shove.DecidingGround, 1e3)} mm of ground";

    private string Degrees(string key, double angle) => Value(key, angle, 180.0 / Math.PI);

    private static string Both(string own, string other) => own == other ? own : $"{own} and {other}";

    private string Unless(string before, string key, double value, double scale = 1.0, string after = "") =>
        Value(key, value, scale) is not "0" and string text ? before + text + after : "";

    // as drawn: the middle may lie off the file's value where only one direction is possible
    private string Value(string key, double value, double scale = 1.0) => _drawn.TryGetValue(key, out (double Middle, double Tolerance, DrawShape Shape) v)
        ? $"{Plain(scale * v.Middle)} {(v.Shape == DrawShape.Factor ? ToleranceText.Of(v.Middle, v.Tolerance, v.Shape, 3) : "± " + Plain(scale * v.Tolerance))}"
        : Plain(scale * value);

    private static string Plain(double value) => PlainNumber.UnsignedZero(value.ToString("0.###", CultureInfo.InvariantCulture));
}
