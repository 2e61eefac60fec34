using PushSim.Analysis.Chance;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Drawing;

/// <summary>Matches of a scenario file with one of its numbers elsewhere: at the middles of all others, or with the draws of the contest, so that places of one number and the contest itself can be compared
/// match by match. Safe from several threads.</summary>
public sealed class ShiftedMatches
{
    private readonly DrawableScenario _scenario;
    private readonly double[] _middles;
    private readonly int[] _drawn;
    private readonly IReadOnlyList<DrawnQuantity> _quantities;
    private readonly Dictionary<string, int[]> _slots;

    private ShiftedMatches(DrawableScenario scenario)
    {
        _scenario = scenario;
        _middles = [.. scenario.Values.Select(v => v.Middle)];
        _drawn = [.. Enumerable.Range(0, _middles.Length).Where(i => scenario.Values[i].Tolerance > 0.0)];
        _quantities = ErrorCauses.Quantities([.. _drawn.Select(i => scenario.Values[i])]);
        _slots = scenario.Values.Select((v, i) => (v.Key, i)).GroupBy(v => v.Key, v => v.i, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);
    }

    /// <summary>Label of the contest of its two robots.</summary>
    public string Label => _scenario.Label;

    /// <summary>Opens a scenario file; null if it cannot be read.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">How it is read.</param>
    public static ShiftedMatches? Open(string path, ReadOptions options) => DrawableScenario.OpenAll(path, options).Scenario is { } scenario ? new ShiftedMatches(scenario) : null;

    /// <summary>Whether a number of the files can be moved.</summary>
    /// <param name="key">Its path, of the opponent's after "opponent.".</param>
    public bool Has(string key) => SlotsOf(key).Length > 0;

    /// <summary>The match of the middle values, one of them moved.</summary>
    /// <param name="key">Path of the number.</param>
    /// <param name="value">Its value [SI; temperatures in degree Celsius].</param>
    /// <returns>Null if the values contradict each other.</returns>
    public ScenarioSettings? At(string key, double value)
    {
        double[] values = [.. _middles];
        foreach (int slot in SlotsOf(key))
        {
            values[slot] = value;
        }

        return Made(values);
    }

    /// <summary>A drawn match, one of its numbers moved by as much as its middle is.</summary>
    /// <param name="key">Path of the number.</param>
    /// <param name="value">Its middle [SI; temperatures in degree Celsius].</param>
    /// <param name="contest">Settles the draws.</param>
    /// <param name="number">Number of the match, from 0 [1].</param>
    /// <returns>Null if the values contradict each other.</returns>
    public ScenarioSettings? Drawn(string key, double value, ContestKey contest, long number)
    {
        double[] values = [.. _middles];
        ulong draws = contest.Draws;
        for (int i = 0; i < _drawn.Length; i++)
        {
            values[_drawn[i]] = _quantities[i].Draw(draws, number, null);
        }

        foreach (int slot in SlotsOf(key))
        {
            TolerancedValue v = _scenario.Values[slot];
            values[slot] = Math.Clamp(values[slot] + value - v.Middle, v.Least, v.Most);
        }

        return Made(values);
    }

    // a star stands for every name
    private int[] SlotsOf(string key)
    {
        int star = key.IndexOf(".*.", StringComparison.Ordinal);
        return star < 0 ? _slots.GetValueOrDefault(key, [])
            : [.. _slots.Where(s => s.Key.Length > key.Length - 1 && s.Key.AsSpan().StartsWith(key.AsSpan(0, star + 1)) && s.Key.AsSpan().EndsWith(key.AsSpan(star + 2))).SelectMany(s => s.Value)];
    }

    private ScenarioSettings? Made(double[] values) => _scenario.With(values, out string _) is { } match ? match with { Numerics = match.Numerics.ForDraws() } : null;
}
