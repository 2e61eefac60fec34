using PushSim.Analysis.Season;
using PushSim.Binding;
using PushSim.Scenarios.Notebook;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Studies;

/// <summary>What a notebook tells: friction by tyre and state of the floor, sliding and as it lets go.</summary>
public sealed record SeasonStudy
{
    /// <summary>The notebook.</summary>
    public required NotebookResult Notebook { get; init; }

    /// <summary>Sliding friction; null if no sliding force was noted often enough.</summary>
    public SeasonFit? Sliding { get; init; }

    /// <summary>Friction as it lets go; null if no peak was noted often enough.</summary>
    public SeasonFit? Breakaway { get; init; }

    /// <summary>The one to read first.</summary>
    public SeasonFit? First => Sliding ?? Breakaway;

    /// <summary>What changed about robots on the last day, in sentences.</summary>
    public IReadOnlyList<string> RobotChanges { get; init; } = [];

    /// <summary>Pulls that the motors limited: static friction is at least that, and nothing else is known from them.</summary>
    public IReadOnlyList<SeasonBound> Bounds { get; init; } = [];

    /// <summary>What set the pulls of a tyre and state: the tyre or the motors; missing or null where it is not known or not one.</summary>
    public IReadOnlyDictionary<(string Tyre, string State), BindingKind?> LimitedBy { get; init; } = new Dictionary<(string, string), BindingKind?>();

    /// <summary>What was taken for granted, and what is left out.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Reads and fits a notebook.</summary>
    /// <param name="path">The notebook.</param>
    /// <param name="garage">Folder of the garage that its robots are in; null: the nearest one upwards of the notebook.</param>
    public static SeasonStudy Of(string path, string? garage = null) => Of(NotebookReader.Read(path), garage);

    /// <summary>Fits a notebook that was read.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="garage">Folder of the garage that its robots are in; null: the nearest one upwards of the notebook.</param>
    public static SeasonStudy Of(NotebookResult notebook, string? garage = null)
    {
        PullRow[] counted = [.. notebook.Rows.Where(r => r.IsCounted)];
        List<string> notes = [.. notebook.Notes];
        int left = notebook.Rows.Count - counted.Length;
        if (left > 0)
        {
            IEnumerable<string> why = notebook.Rows.Where(r => !r.IsCounted).GroupBy(r => r.LeftOut, StringComparer.OrdinalIgnoreCase).OrderByDescending(g => g.Count()).Take(3).Select(g => FormattableString.Invariant($"{g.Count()} {g.Key}"));
            notes.Add(FormattableString.Invariant($"{left} of {notebook.Rows.Count} pulls are left out: {string.Join(", ", why)}"));
        }

        int byMass = counted.Count(r => r.Load is null && r.Mass is not null);
        if (byMass > 0)
        {
            notes.Add(FormattableString.Invariant($"{byMass} {(byMass == 1 ? "pull gives" : "pulls give")} no load: the robot's whole weight is taken"));
        }

        int noLoad = counted.Count(r => r.Load is null && r.Mass is null);
        if (noLoad > 0)
        {
            notes.Add(FormattableString.Invariant($"{noLoad} {(noLoad == 1 ? "pull gives" : "pulls give")} neither load nor mass and cannot be used"));
        }

        if (counted.Any(r => r.When is null) && counted.Any(r => r.When is not null))
        {
            notes.Add("pulls without a date are taken as of one day");
        }

        string[] floors = [.. counted.Select(r => r.Floor).Distinct(StringComparer.OrdinalIgnoreCase)];

        // where a series was counted, "wiped" without a count is its fresh floor
        HashSet<(string, string)> series = [.. counted.Where(r => (r.State.Pulls ?? r.State.Metres) is not null).Select(r => (Key(r.Tyre), State(r, floors.Length > 1)))];
        HashSet<(string, string)> metres = [.. counted.Where(r => r.State.Pulls is null && r.State.Metres is not null).Select(r => (Key(r.Tyre), State(r, floors.Length > 1)))];
        Dictionary<string, string> names = counted.GroupBy(r => Key(r.Tyre), StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Tyre, StringComparer.Ordinal);
        string folder = Path.GetDirectoryName(Path.GetFullPath(notebook.File)) ?? ".";
        SeasonLimits limits = SeasonLimits.Of(counted, Group, Load, new ReadOptions { Garage = garage ?? GarageFolder.Above(folder)?.Path }, folder);
        notes.AddRange(limits.Notes);
        PullRow[] slid = [.. counted.Where(r => !limits.IsOfMotors(r))];
        return new SeasonStudy
        {
            Notebook = notebook,
            Bounds = limits.Bounds,
            LimitedBy = counted.GroupBy(Group).ToDictionary(g => g.Key, g => limits.By(g.Any(r => !limits.IsOfMotors(r)) ? g.Where(r => !limits.IsOfMotors(r)) : g)),
            Sliding = SeasonFit.Of([.. slid.Where(r => r.Sliding is not null).Select(r => Pull(r, r.Sliding!.Value)).OfType<SeasonPull>()]),
            Breakaway = SeasonFit.Of([.. slid.Where(r => r.Peak is not null).Select(r => Pull(r, r.Peak!.Value)).OfType<SeasonPull>()]),
            RobotChanges = Robots(counted),
            Notes = notes,
        };

        (string Tyre, string State) Group(PullRow r) => (names[Key(r.Tyre)], State(r, floors.Length > 1));

        static double? Load(PullRow r) => r.Load ?? (r.Mass * UnitTable.G);

        SeasonPull? Pull(PullRow r, double force)
        {
            (double? load, string state) = (Load(r), State(r, floors.Length > 1));
            bool isMetres = metres.Contains((Key(r.Tyre), state));
            double? count = isMetres ? r.State.Metres : r.State.Pulls;
            return load is not double newton ? null
                : new SeasonPull(names[Key(r.Tyre)], state, r.When is { } when ? DateOnly.FromDateTime(when).DayNumber : 0, newton, force) { Count = count ?? (series.Contains((Key(r.Tyre), state)) ? 0.0 : null), IsInMetres = isMetres };
        }
    }

    private static string Key(string tyre) => tyre.ToLowerInvariant();

    private static string State(PullRow r, bool hasFloors) => string.Join(", ", new[] { hasFloors ? r.Floor : "", r.State.Word }.Where(t => t.Length > 0));

    private static List<string> Robots(PullRow[] rows)
    {
        List<string> changes = [];
        DateTime? last = rows.Max(r => r.When)?.Date;
        foreach (IGrouping<string, PullRow> robot in rows.Where(r => r.Robot.Length > 0 && r.When is not null).GroupBy(r => r.Robot))
        {
            PullRow? now = robot.LastOrDefault(r => r.When!.Value.Date == last);
            PullRow? before = robot.Where(r => r.When!.Value.Date < last).MaxBy(r => r.When);
            if (now is { Mass: double m } && before is { Mass: double old } && Math.Abs(m - old) > 0.01 * old)
            {
                changes.Add(FormattableString.Invariant($"{robot.Key} weighs {1000.0 * m:0} g, {1000.0 * old:0} g before"));
            }

            if (now is not null && before is not null && now.Motors.Length > 0 && before.Motors.Length > 0 && now.Motors != before.Motors)
            {
                changes.Add($"{robot.Key} has motors {now.Motors}, {before.Motors} before");
            }
        }

        return changes;
    }
}
