using PushSim.Simulation;
using PushSim.Surroundings;

namespace PushSim.Cli;

/// <summary>What all matches of a ladder have in common, in one sentence: floor, start, drivers, rule.</summary>
internal static class MatchSetting
{
    /// <summary>The sentence, with where to change it.</summary>
    /// <param name="match">Any of the matches, at the files' own values.</param>
    /// <param name="scene">Name of the scenario file that it comes from; null for none.</param>
    public static string Of(ScenarioSettings match, string? scene)
    {
        string from = scene is null ? "" : $" (from {Path.GetFileName(scene)})";
        string change = scene is null ? "; another floor, start or driver: --scene FILE (pushsim new --kind shove writes one)" : "";
        return $"every match{from}: {Floor(match)}; {Start(match)}; {Drivers(match)}; {Rule(match)}{change}.";
    }

    private static string Floor(ScenarioSettings match)
    {
        FloorSettings floor = match.Floor;
        string friction = floor.FrictionScale == 1.0 ? "the floor that the tyres' friction was given for" : Text($"floor with {floor.FrictionScale:0.###} times the friction of the tyres' files");
        string dust = floor.Dust > 0.0 ? Text($", dust {floor.Dust:0.###}") : "";
        string slope = floor.SlopeX == 0.0 && floor.SlopeY == 0.0 ? "" : Text($", sloping {Degrees(floor.SlopeX)} and {Degrees(floor.SlopeY)}");
        string patches = floor.Patches.Count > 0 ? Text($", {floor.Patches.Count} patches") : "";
        return friction + dust + slope + patches;
    }

    private static string Start(ScenarioSettings match)
    {
        ShoveSettings s = match.Shove;
        (double own, double other) = (match.Manoeuvre.InitialSpeed, match.Opponent!.Manoeuvre.InitialSpeed);
        string offset = s.Offset == 0.0 ? "" : Text($", {1000.0 * s.Offset:0.#} mm off centre");
        string speed = own == 0.0 && other == 0.0 ? "" : Text($", moving at {own:0.##} and {other:0.##} m/s");
        return Text($"noses {1000.0 * s.Gap:0.#} mm apart{offset}{speed}");
    }

    private static string Drivers(ScenarioSettings match)
    {
        (ManoeuvreSettings own, ManoeuvreSettings other) = (match.Manoeuvre, match.Opponent!.Manoeuvre);
        (double mine, double theirs) = (own.Driver.ReactionDelay, other.Driver.ReactionDelay);
        string throttle = own.GreatestThrottle == other.GreatestThrottle ? Text($"{100.0 * own.GreatestThrottle:0} %") : Text($"{100.0 * own.GreatestThrottle:0} and {100.0 * other.GreatestThrottle:0} %");
        string reaction = mine == 0.0 && theirs == 0.0 ? "no reaction time" : mine == theirs ? Text($"reaction time {mine:0.###} s") : Text($"reaction times {mine:0.###} and {theirs:0.###} s");
        return $"{throttle} throttle, {reaction}";
    }

    private static string Rule(ScenarioSettings match) =>
        Text($"lost when pushed back {match.Shove.Line:0.###} m, after {match.Manoeuvre.EndTime:0.###} s won by {1000.0 * match.Shove.DecidingGround:0.#} mm of ground");

    private static string Degrees(double angle) => Text($"{angle * 180.0 / Math.PI:0.#} deg");

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
