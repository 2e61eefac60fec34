using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <content>Values that are lists: texts, numbers, pairs of a curve.</content>
internal sealed partial class Section
{
    /// <summary>A list of texts with their places; null if missing or wrong.</summary>
    public IReadOnlyList<TomlText>? Texts(string key)
    {
        KeyDefinition d = Definition(key);
        if (Entry(key) is not TomlEntry e)
        {
            return null;
        }

        if (e.Value is not TomlArray a || a.Items.Any(i => i is not TomlText))
        {
            _context.Error(e.Value.Place, $"\"{key}\" takes a list of texts", $"for example {key} = {d.Example}");
            return null;
        }

        // without blanks at the ends, like the names that they refer to
        List<TomlText> texts = [.. a.Items.Cast<TomlText>().Select(t => t.Value.Trim() is var trimmed && trimmed.Length == t.Value.Length ? t : new TomlText(t.Place, trimmed))];
        Note(PathTo(key), a.Place, string.Join(", ", texts.Select(t => SourceFile.Clean(t.Value, 60))));
        return texts;
    }

    /// <summary>A list of numbers in SI; null if missing or wrong.</summary>
    public IReadOnlyList<double>? Numbers(string key)
    {
        KeyDefinition d = Definition(key);
        if (Entry(key) is not TomlEntry e)
        {
            return null;
        }

        if (e.Value is not TomlArray a)
        {
            _context.Error(e.Value.Place, $"\"{key}\" takes a list, not {e.Value.Words}", $"for example {key} = {d.Example}");
            return null;
        }

        return _context.Drawn is not null
            ? [.. a.Items.Select(Again)]
            : [.. a.Items.Select((item, i) => Quantity(d, item, $"{PathTo(key)}[{i + 1}]"))];
    }

    /// <summary>A list of pairs in SI, rising in the first; null if missing or wrong.</summary>
    public IReadOnlyList<(double First, double Second)>? Curve(string key, int most, double firstMin, double firstMax, double secondMin, double secondMax)
    {
        KeyDefinition d = Definition(key);
        if (Entry(key) is not TomlEntry e)
        {
            return null;
        }

        if (e.Value is not TomlArray { Items.Count: > 0 } a || a.Items.Any(i => i is not TomlArray { Items.Count: 2 }))
        {
            _context.Error(e.Value.Place, $"\"{key}\" takes a list of pairs", $"for example {key} = {d.Example}");
            return null;
        }

        if (_context.Drawn is not null)
        {
            return [.. a.Items.Cast<TomlArray>().Select(p => (Again(p.Items[0]), Again(p.Items[1])))];
        }

        if (a.Items.Count > most)
        {
            _context.Error(a.Place, $"\"{key}\" has {a.Items.Count} points, at most {most} are allowed", "leave out points where the curve is straight");
            return null;
        }

        KeyDefinition first = d with { Min = firstMin, Max = firstMax };
        KeyDefinition second = d with { Min = secondMin, Max = secondMax, Dimension = d.SecondDimension };
        List<(double First, double Second)> points = [];
        foreach (TomlArray pair in a.Items.Cast<TomlArray>())
        {
            double x = Quantity(first, pair.Items[0], $"{PathTo(key)}[{points.Count + 1}].1");
            double y = Quantity(second, pair.Items[1], $"{PathTo(key)}[{points.Count + 1}].2");
            if (points.Count > 0 && x <= points[^1].First)
            {
                _context.Error(pair.Items[0].Place, $"\"{key}\" must rise from point to point", "put the points in rising order, no value twice");
            }

            points.Add((x, y));
        }

        return points;
    }
}
