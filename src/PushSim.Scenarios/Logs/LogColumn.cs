using System.Text.RegularExpressions;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Logs;

/// <summary>A column: its role, and SI per unit.</summary>
/// <param name="Index">Place in the row, from 0.</param>
/// <param name="Role">What it holds.</param>
/// <param name="Name">Its header; empty without one.</param>
/// <param name="Unit">Unit that the header names; empty if none.</param>
/// <param name="Factor">SI per unit; NaN while no unit is known.</param>
internal sealed partial record LogColumn(int Index, LogRole Role, string Name, string Unit, double Factor)
{
    /// <summary>Name of a unit that needs a calibration.</summary>
    public const string Millivolt = "mV";

    private static readonly (LogRole Role, string[] Words)[] Names =
    [
        (LogRole.Tyre, ["tyre", "tire", "tyres", "tires", "reifen", "name"]),
        (LogRole.Material, ["material", "compound"]),
        (LogRole.Unit, ["unit", "units", "einheit"]),
        (LogRole.Peak, ["peak", "breakaway", "static", "max"]),
        (LogRole.TurnRate, ["rpm", "wheel", "turn", "omega"]),
        (LogRole.SurfaceSpeed, ["speed", "surface"]),
        (LogRole.Current, ["current", "amps", "strom"]),
        (LogRole.Voltage, ["voltage", "battery", "volts", "spannung"]),
        (LogRole.Time, ["time", "t", "zeit", "timestamp", "elapsed", "seconds", "second", "sec", "s", "ms", "millis", "milliseconds", "us", "temps", "tiempo"]),
        (LogRole.Load, ["normal"]),
        (LogRole.Force, ["force", "f", "kraft", "zugkraft", "reading", "readings", "value", "cell", "loadcell", "tension", "weight", "newton", "newtons", "n", "gf", "kgf", "lbf", "ozf", "g", "kg", "mv", "grams"]),
        (LogRole.Load, ["load"]),
        (LogRole.Pull, ["pull", "run", "test", "trial"]),
    ];

    // What else the force is called once the tyre slides; taken where no column is called the force.
    private static readonly string[] SteadyNames =
    [
        "sliding", "slide", "slides", "slid", "kinetic", "dynamic", "plateau", "steady", "running", "mean", "average", "avg", "constant", "gleitkraft", "gleiten", "gleitend",
    ];

    // What a person writes down beside a pull, as the sheets of `plan` have it: not to be told as unused.
    private static readonly string[] AsideNames =
    [
        "block", "battery", "temperature", "temp", "humidity", "cleaned", "clean", "remarks", "remark", "notes", "note", "comments", "comment", "bemerkung", "bemerkungen",
        "date", "day", "weather", "operator", "no", "nr", "number", "id", "index", "row", "sample",
    ];

    private static readonly Dictionary<string, double> ForceNames = new(StringComparer.Ordinal)
    {
        ["g"] = 1e-3 * UnitTable.G, ["gram"] = 1e-3 * UnitTable.G, ["grams"] = 1e-3 * UnitTable.G, ["kg"] = UnitTable.G, ["kilogram"] = UnitTable.G, ["oz"] = UnitTable.Ounce * UnitTable.G,
        ["ounces"] = UnitTable.Ounce * UnitTable.G, ["lb"] = UnitTable.Pound * UnitTable.G, ["lbs"] = UnitTable.Pound * UnitTable.G, ["pounds"] = UnitTable.Pound * UnitTable.G, ["n"] = 1.0, ["mn"] = 1e-3, ["kn"] = 1e3,
    };

    /// <summary>SI per unit of force; NaN if it is none. A mass unit on a force is meant as the weight of that mass.</summary>
    public static double ForceFactor(string unit) =>
        UnitTable.TryFind(Dimension.Force, unit, out Unit found) ? found.Factor
        : ForceNames.TryGetValue(unit.Trim().ToLowerInvariant(), out double factor) ? factor
        : UnitTable.TryFind(Dimension.Force, unit.ToLowerInvariant(), out found) ? found.Factor : double.NaN;

    /// <summary>SI per unit of time; NaN if it is none.</summary>
    public static double TimeFactor(string unit) => unit.Trim().ToLowerInvariant() switch
    {
        "s" or "sec" or "secs" or "second" or "seconds" => 1.0,
        "ms" or "msec" or "millis" or "milliseconds" or "millisecond" => 1e-3,
        "us" or "µs" or "μs" or "micros" or "microseconds" => 1e-6,
        "min" or "mins" or "minute" or "minutes" => 60.0,
        _ => double.NaN,
    };

    /// <summary>Whether it is named, and not as what a person writes down beside a pull.</summary>
    public bool IsWorthTelling => Name.Any(char.IsLetterOrDigit) && !Split(Name).Words.Any(AsideNames.Contains);

    /// <summary>The columns of a header row, with a row of units below it or without.</summary>
    public static List<LogColumn> OfHeader(IReadOnlyList<string> header, IReadOnlyList<string>? units)
    {
        List<LogColumn> columns = [];
        List<int> steady = [];
        for (int i = 0; i < header.Count; i++)
        {
            (string[] words, string unit) = Split(header[i]);
            unit = unit.Length == 0 && units is not null ? units[i].Trim('[', ']', '(', ')', ' ') : unit;
            columns.Add(Column(i, header[i].Trim(), words, unit));
            if (columns[i].Role == LogRole.Ignored && words.Any(SteadyNames.Contains) && (unit.Length == 0 || unit == Millivolt || !double.IsNaN(ForceFactor(unit))))
            {
                steady.Add(i);
            }
        }

        // "sliding [gf]"; in a unit of force before one in none, which may be a remark. A lone cell may be a title above the header
        if (!columns.Any(c => c.Role == LogRole.Force) && steady.Count > 0 && (header.Count > 1 || columns[0].Unit.Length > 0))
        {
            int i = steady.OrderBy(k => columns[k].Unit.Length == 0).First();
            columns[i] = columns[i] with { Role = LogRole.Force, Factor = ForceFactorOrUnknown(columns[i].Unit) };
        }

        // "load" and "pull" are the force where nothing else is
        if (!columns.Any(c => c.Role == LogRole.Force))
        {
            int i = columns.FindIndex(c => c.Role == LogRole.Pull && !double.IsNaN(ForceFactor(c.Unit)));
            i = i >= 0 ? i : columns.FindIndex(c => c.Role == LogRole.Load);
            i = i >= 0 ? i : columns.FindIndex(c => c.Role == LogRole.Pull);

            // whatever its name, in whatever language: a column in a unit of force ("g" may be an acceleration)
            i = i >= 0 ? i : columns.FindIndex(c => c.Role == LogRole.Ignored && c.Unit is "N" or "mN" or "kN" or "gf" or "kgf" or "lbf" or "ozf" or Millivolt);
            bool hasPeak = columns.Any(c => c.Role == LogRole.Peak);
            if (i >= 0 && !hasPeak)
            {
                columns[i] = columns[i] with { Role = LogRole.Force, Factor = ForceFactorOrUnknown(columns[i].Unit) };
            }
        }

        // a role twice: the first counts
        return [.. columns.Select((c, i) => c.Role != LogRole.Ignored && columns.Take(i).Any(b => b.Role == c.Role) ? c with { Role = LogRole.Ignored } : c)];
    }

    /// <summary>Whether a cell is a unit and nothing else.</summary>
    public static bool IsUnit(string cell)
    {
        string u = cell.Trim('[', ']', '(', ')', ' ');
        return u.Length > 0 && (!double.IsNaN(ForceFactor(u)) || !double.IsNaN(TimeFactor(u)) || UnitTable.DimensionOf(u) is not null || u is Millivolt or "-");
    }

    private static LogColumn Column(int index, string name, string[] words, string unit)
    {
        foreach ((LogRole role, string[] names) in Names)
        {
            string? word = words.FirstOrDefault(names.Contains);
            if (word is null)
            {
                continue;
            }

            // a column called "ms" or "gf" names its unit
            if (unit.Length == 0 && (role == LogRole.Time ? !double.IsNaN(TimeFactor(word)) : role == LogRole.Force && word.Length <= 5 && word != "f" && (word == "mv" || !double.IsNaN(ForceFactor(word)))))
            {
                unit = word == "mv" ? Millivolt : word;
            }

            // "wheel load [N]": a unit that the first word cannot have leaves the column to the next one
            LogColumn column = Typed(new LogColumn(index, role, name, unit, double.NaN));
            if (column.Role != LogRole.Ignored)
            {
                return column;
            }
        }

        return new LogColumn(index, LogRole.Ignored, name, unit, 1.0);
    }

    private static LogColumn Typed(LogColumn c)
    {
        Unit unit;
        switch (c.Role)
        {
            case LogRole.Time:
                return c with { Factor = TimeFactor(c.Unit) };
            case LogRole.Force or LogRole.Load or LogRole.Peak:
                return c with { Factor = ForceFactorOrUnknown(c.Unit) };
            case LogRole.SurfaceSpeed or LogRole.TurnRate:
                if (UnitTable.TryFind(Dimension.Speed, c.Unit, out unit))
                {
                    return c with { Role = LogRole.SurfaceSpeed, Factor = unit.Factor };
                }

                bool isRpm = c.Name.Contains("rpm", StringComparison.OrdinalIgnoreCase);
                return UnitTable.TryFind(Dimension.AngularSpeed, c.Unit, out unit) ? c with { Role = LogRole.TurnRate, Factor = unit.Factor }
                    : isRpm ? c with { Role = LogRole.TurnRate, Factor = Math.PI / 30.0 }
                    : c.Role == LogRole.SurfaceSpeed && c.Unit.Length == 0 ? c with { Factor = 1.0 } : c with { Role = LogRole.Ignored };
            case LogRole.Current:
                return c with { Factor = UnitTable.TryFind(Dimension.Current, c.Unit, out unit) ? unit.Factor : 1.0 };
            case LogRole.Voltage:
                return c with { Factor = UnitTable.TryFind(Dimension.Voltage, c.Unit, out unit) ? unit.Factor : 1.0 };
            default:
                return c with { Factor = 1.0 };
        }
    }

    private static double ForceFactorOrUnknown(string unit) => unit.Length == 0 ? double.NaN : ForceFactor(unit);

    // "Force [gf]", "force (N)", "Zeit/ms", "force_n", "t in s", "wheel_speed_m_per_s"
    private static (string[] Words, string Unit) Split(string header)
    {
        string text = header.Trim().Trim('"').Trim();
        Match bracket = Bracket().Match(text);
        if (bracket.Success)
        {
            return (Words(text.Remove(bracket.Index, bracket.Length)), bracket.Groups[1].Value.Trim());
        }

        int slash = text.LastIndexOf('/');
        if (slash > 0 && IsUnit(text[(slash + 1)..]))
        {
            return (Words(text[..slash]), text[(slash + 1)..].Trim());
        }

        string[] words = Words(text);
        foreach ((string tail, string unit) in new[] { ("m_per_s", "m/s"), ("rad_per_s", "rad/s"), ("mm_per_s", "mm/s") })
        {
            if (text.EndsWith("_" + tail, StringComparison.OrdinalIgnoreCase))
            {
                return (words, unit);
            }
        }

        string last = words.Length > 1 ? words[^1] : "";
        return last.Length > 0 && (!double.IsNaN(ForceFactor(last)) || !double.IsNaN(TimeFactor(last)) || last is "mv" or "rpm" or "a" or "v")
            ? (words[..^1], last switch { "mv" => Millivolt, "a" => "A", "v" => "V", _ => last }) : (words, "");
    }

    private static string[] Words(string text) => [.. WordBreak().Split(text.ToLowerInvariant()).Where(w => w.Length > 0)];

    [GeneratedRegex(@"[\[(]([^\])]*)[\])]")]
    private static partial Regex Bracket();

    [GeneratedRegex(@"[^\p{L}\p{Nd}]+")]
    private static partial Regex WordBreak();
}
