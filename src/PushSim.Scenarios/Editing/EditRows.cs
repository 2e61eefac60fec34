using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Editing;

/// <summary>The values of files that were read, as rows that a person may change. All that a row says comes from the key table.</summary>
public static class EditRows
{
    // The wide middle of a slider reaches this factor to either side of its value, so that its places stay close to what a builder may change [1].
    private const double MostFactor = 3.0;

    // A key whose usual values lie within this ratio spreads them over the whole track [1].
    private const double Narrow = 30.0;

    // Share of the track that leads from the middle to an end of the usual values [1].
    private const double Outer = 0.125;

    /// <summary>Every value that the files give and every other of the same tables, in the order of the key table.</summary>
    /// <param name="read">What was read.</param>
    /// <param name="at">The same files as they were when the sliders' ends were set; null: this reading.</param>
    public static IReadOnlyList<EditRow> Of(ReadResult read, ReadResult? at = null)
    {
        ArgumentNullException.ThrowIfNull(read);
        List<EditRow> rows = [];
        Dictionary<(string, string), double> middles = new((at ?? read).Inputs.Where(i => i.Value is not null).GroupBy(i => (i.Owner, i.Key)).Select(g => KeyValuePair.Create(g.Key, g.First().Value!.Value)));
        foreach (InputRow input in read.Inputs.DistinctBy(i => (i.Owner, i.Key)))
        {
            if (Given(input, read, middles) is EditRow row)
            {
                rows.Add(row);
            }
        }

        rows.AddRange(NotGiven(read, rows));
        return [.. Together(rows), .. rows];
    }

    // one row for what is the same of every part of a kind: a builder changes all motors, and never one of four
    private static IEnumerable<EditRow> Together(List<EditRow> rows) =>
        rows.Where(r => r.Line > 0 && IsOfPart(r)).GroupBy(r => (r.Owner, r.Definition)).Where(g => g.Count() > 1 && g.All(r => r.Text == g.First().Text) && g.Count() == Parts(rows, g.First()))
            .Select(g => g.First() with { Path = $"{g.Key.Definition.Section}.*.{g.Key.Definition.Name}", Members = [.. g] });

    private static bool IsOfPart(EditRow row) => row.Path.Length > row.Definition.Section.Length + row.Definition.Name.Length + 2 && row.Definition.Section.IndexOf('.', StringComparison.Ordinal) < 0;

    private static int Parts(List<EditRow> rows, EditRow one) =>
        rows.Where(r => r.Owner == one.Owner && r.Definition.Section == one.Definition.Section && IsOfPart(r)).Select(r => r.Path[..r.Path.LastIndexOf('.')]).Distinct().Count();

    /// <summary>The row of the key table that a path means; null if it means none.</summary>
    /// <param name="owner">Whose it is: "robot", "opponent" or nothing.</param>
    /// <param name="path">The path.</param>
    public static KeyDefinition? Definition(string owner, string path)
    {
        int dot = path.LastIndexOf('.');
        (string before, string name) = dot < 0 ? ("", path) : (path[..dot], path[(dot + 1)..]);
        FileKind file = owner.Length > 0 ? FileKind.Robot : FileKind.Scenario;
        return KeySection.Of(file)
            .Where(s => s.Key is null ? before.Length == 0 : before == s.Name || (s.Key.Kind == KeyKind.Tables && before.StartsWith(s.Name + ".", StringComparison.Ordinal)))
            .OrderByDescending(s => s.Name.Length).SelectMany(s => s.Keys).FirstOrDefault(k => k.Name == name);
    }

    private static EditRow? Given(InputRow input, ReadResult read, Dictionary<(string, string), double> middles)
    {
        if (Definition(input.Owner, input.Key) is not { Kind: KeyKind.Quantity or KeyKind.Whole or KeyKind.Flag or KeyKind.Choice } key)
        {
            return null;
        }

        var row = new EditRow(input.Owner, input.Key, key, input.Text)
        {
            Choices = key.Kind == KeyKind.Flag ? ["true", "false"] : key.Choices, File = input.File, Line = input.Line, Column = input.Column,
        };
        if (input.Value is not double si)
        {
            return row;
        }

        Unit unit = key.Kind == KeyKind.Quantity && Quantity.TryParse(input.Text, key.Dimension, out Quantity q, out string _, out string _) ? q.Unit : new Unit("", 1.0);
        return InUnit(row, unit, si, input.Tolerance, middles.GetValueOrDefault((input.Owner, input.Key), si), path => read.Inputs.FirstOrDefault(i => i.Owner == input.Owner && i.Key == path)?.Value);
    }

    private static EditRow InUnit(EditRow row, Unit unit, double si, double tolerance, double middle, Func<string, double?> other)
    {
        (double near, double far) = Range(row, si, middle, isNear: true, other);
        (double low, double high) = row.Definition.Kind == KeyKind.Whole ? (near, far) : Range(row, si, middle, isNear: false, other);
        double[] ends = [.. new[] { low, near, far, high }.Select(v => Rounded((v - unit.Offset) / unit.Factor)).Order()];
        return row with
        {
            UnitFactor = unit.Factor, UnitOffset = unit.Offset, Unit = unit.Name, Value = (si - unit.Offset) / unit.Factor, Tolerance = tolerance / Math.Abs(unit.Factor),
            Low = ends[0], High = ends[^1], Track = Track(ends),
        };
    }

    private static IReadOnlyList<TrackPart> Track(double[] ends)
    {
        if (!(ends[2] > ends[1]))
        {
            return ends[^1] > ends[0] ? [new TrackPart(0.0, 1.0, ends[0], ends[^1])] : [];
        }

        double from = ends[1] > ends[0] ? Outer : 0.0;
        double to = ends[3] > ends[2] ? 1.0 - Outer : 1.0;
        TrackPart[] parts = [new(0.0, from, ends[0], ends[1]), new(from, to, ends[1], ends[2]), new(to, 1.0, ends[2], ends[3])];
        return [.. parts.Where(p => p.High > p.Low)];
    }

    // usual values, near the value no further than a factor from the middle where they span much; what is allowed, and what other values leave over
    private static (double Low, double High) Range(EditRow row, double si, double middle, bool isNear, Func<string, double?> other)
    {
        KeyDefinition key = row.Definition;
        (double low, double high) = (Math.Max(key.Min, key.UsualMin), Math.Min(key.Max, key.UsualMax));
        bool isNarrow = key.UsualMin > 0.0 && key.UsualMax <= Narrow * key.UsualMin;
        if (isNear && middle != 0.0 && !isNarrow)
        {
            (double near, double far) = (Math.Abs(middle) / MostFactor, Math.Abs(middle) * MostFactor);
            (low, high) = middle > 0.0
                ? (low > 0.0 || !double.IsFinite(low) ? Math.Max(low, near) : low < 0.0 ? Math.Max(low, -far) : low, Math.Min(high, far))
                : (Math.Max(low, -far), high < 0.0 || !double.IsFinite(high) ? Math.Min(high, -near) : Math.Min(high, far));
        }

        (low, high) = (double.IsFinite(low) ? low : Math.Min(si, 0.0), double.IsFinite(high) ? high : Math.Max(si, 1.0));
        int dot = row.Path.LastIndexOf('.');
        double? least = key.NotBelow.Length > 0 ? other(row.Path[..(dot + 1)] + key.NotBelow) : null;
        double? most = key.NotAbove.Length > 0 ? other(row.Path[..(dot + 1)] + key.NotAbove) : null;

        // the value that holds is always on it
        (low, high) = (Math.Min(low, si), Math.Max(high, si));
        return (Math.Max(low, least ?? low), Math.Min(high, most ?? high));
    }

    private static RobotSettings? Robot(ReadResult read, string owner) => owner switch
    {
        "robot" => read.Scenario?.Robot ?? read.Robot,
        "opponent" => read.Scenario?.Opponent?.Robot,
        _ => null,
    };

    private static double Rounded(double value) => double.Parse(value.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    // what the tables that are there leave out: the usual value holds, or one that is worked out from others
    private static IEnumerable<EditRow> NotGiven(ReadResult read, List<EditRow> given)
    {
        HashSet<(string, string)> has = [.. read.Inputs.Select(i => (i.Owner, i.Key))];
        string[][] tables = [.. given.Select(r => new[] { r.Owner, r.Path.LastIndexOf('.') is > 0 and int dot ? r.Path[..dot] : "", r.Definition.Section }).DistinctBy(t => (t[0], t[1]))];
        foreach (string[] table in tables.Where(t => t[1].Length > 0))
        {
            foreach (KeyDefinition key in KeyTable.In(table[2]).Where(k => k.Kind is KeyKind.Quantity or KeyKind.Flag or KeyKind.Whole))
            {
                string path = $"{table[1]}.{key.Name}";
                double? usual = key.OwnDefault is double own && double.IsFinite(own) ? own : null;
                string part = table[1].Length > table[2].Length ? table[1][(table[2].Length + 1)..] : "";
                if (has.Contains((table[0], path)) || (usual ?? (key.Kind == KeyKind.Quantity && Robot(read, table[0]) is RobotSettings robot ? WorkedOut.Value(robot, key, part) : null)) is not double value)
                {
                    continue;
                }

                var row = new EditRow(table[0], path, key, key.Kind == KeyKind.Whole ? value.ToString("0", CultureInfo.InvariantCulture) : KeyLine.Value(key, value, usual is null ? 3 : 6)) { Source = usual is null ? EditSource.Estimate : EditSource.Default, Choices = key.Kind == KeyKind.Flag ? ["true", "false"] : [] };
                yield return key.Kind == KeyKind.Flag ? row : InUnit(row, key.Kind == KeyKind.Whole ? new Unit("", 1.0) : key.Unit, value, 0.0, value, p => read.Inputs.FirstOrDefault(i => i.Owner == table[0] && i.Key == p)?.Value);
            }
        }
    }
}
