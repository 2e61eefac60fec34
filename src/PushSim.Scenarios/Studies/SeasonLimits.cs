using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Scenarios.Notebook;

namespace PushSim.Scenarios.Studies;

/// <summary>
/// What set the pulls of a notebook, by the robot of each row as the garage has it: tyre or motors (<see cref="LimitJudge"/>, which `fit` of a log asks too). Pulls of one tyre, state, robot and load are judged
/// together, so that none is picked by its own scatter. Those at the motors' limit tell no sliding friction; they only bound the static one from below.
/// </summary>
internal sealed class SeasonLimits
{
    // Loads that differ by less are one load [1].
    private const double SameLoad = 0.1;

    // A peak that stands out above the sliding force says that something slid [1].
    private const double ClearPeak = 1.05;

    private readonly Dictionary<string, (StallForce? Stall, string Motors)> _robots = new(StringComparer.Ordinal);
    private readonly Dictionary<PullRow, PullLimit> _of = [];
    private readonly List<SeasonBound> _bounds = [];
    private readonly List<string> _notes = [];
    private readonly HashSet<string> _otherMotors = new(StringComparer.Ordinal);
    private readonly ReadOptions _options;
    private readonly string _folder;

    private SeasonLimits(ReadOptions options, string folder) => (_options, _folder) = (options, folder);

    /// <summary>Tyres that motors limited, with what that tells.</summary>
    public IReadOnlyList<SeasonBound> Bounds => _bounds;

    /// <summary>What a user should know.</summary>
    public IReadOnlyList<string> Notes => _notes;

    /// <summary>Judges all rows.</summary>
    /// <param name="rows">Rows that count.</param>
    /// <param name="groups">Tyre and state of a row, as the fit has them.</param>
    /// <param name="load">Load of a row [N]; null if not known.</param>
    /// <param name="options">How robots are read.</param>
    /// <param name="folder">Folder of the notebook: robots named by file are sought there too.</param>
    public static SeasonLimits Of(IReadOnlyList<PullRow> rows, Func<PullRow, (string Tyre, string State)> groups, Func<PullRow, double?> load, ReadOptions options, string folder)
    {
        var limits = new SeasonLimits(options, folder);
        foreach (var together in rows.Where(r => load(r) > 0.0 && (r.Sliding ?? r.Peak) is > 0.0).GroupBy(r => (Group: groups(r), r.Robot, Load: Math.Round(Math.Log(load(r)!.Value) / SameLoad))))
        {
            limits.Judge(together.Key.Group, together.Key.Robot, [.. together], load);
        }

        return limits;
    }

    /// <summary>Whether the motors set a pull.</summary>
    public bool IsOfMotors(PullRow row) => _of.TryGetValue(row, out PullLimit? l) && l.IsOfMotors;

    /// <summary>What set the pulls of some rows: the one thing that set them all; null where it is not known or not one.</summary>
    public BindingKind? By(IEnumerable<PullRow> rows)
    {
        BindingKind?[] all = [.. rows.Select(r => _of.TryGetValue(r, out PullLimit? l) ? l.By : null).Distinct()];
        return all.Length == 1 ? all[0] : null;
    }

    private void Judge((string Tyre, string State) group, string robot, PullRow[] rows, Func<PullRow, double?> load)
    {
        StallForce? stall = Stall(robot, rows[0]);
        double[] forces = [.. rows.Select(r => (r.Sliding ?? r.Peak)!.Value)];
        bool hasPeak = rows.Where(r => r.Sliding is not null && r.Peak is not null).Select(r => r.Peak!.Value / r.Sliding!.Value).DefaultIfEmpty(1.0).Average() > ClearPeak;
        PullLimit limit = LimitJudge.Judge(Interval.OfMean(forces), stall, rows.Any(r => r.Source.Length > 0), hasPeak, isDrag: false, new PlateauEvidence());
        foreach (PullRow row in rows)
        {
            _of[row] = limit;
        }

        string name = group.State.Length == 0 ? group.Tyre : $"{group.Tyre}, {group.State}";
        if (limit.IsOfMotors)
        {
            double least = rows.Max(r => Math.Max(r.Peak ?? 0.0, r.Sliding ?? 0.0) / load(r)!.Value);
            _bounds.Add(new SeasonBound(group.Tyre, group.State, least, rows.Length, robot, stall!.Force));
            _notes.Add(FormattableString.Invariant($"{name}: the motors of {robot} set {(rows.Length == 1 ? "one pull" : $"{rows.Length} pulls")} ({limit.Ratio:0.00} of the {stall.Force:0.0} N that they give), so static friction is at least {least:0.00} there; sliding friction is not known from {(rows.Length == 1 ? "it" : "them")}"));
        }
        else if (limit.IsInconsistent)
        {
            _notes.Add(FormattableString.Invariant($"{name}: {rows.Length} {(rows.Length == 1 ? "pull is" : "pulls are")} {limit.Ratio:0.00} times what the motors of {robot} give ({stall!.Force:0.0} N): check motor, gear and battery of its file, and the unit of the readings"));
        }
        else if (limit.Reason == PullReason.NearMotors)
        {
            _notes.Add(FormattableString.Invariant($"{name}: pulls with {robot} are {limit.Ratio:0.00} of what its motors give ({stall!.Force:0.0} N), too close to tell whether the tyre slid"));
        }
    }

    // of the robot as it is now, if it still has the motors of that day
    private StallForce? Stall(string robot, PullRow row)
    {
        if (robot.Length == 0)
        {
            return null;
        }

        if (!_robots.TryGetValue(robot, out (StallForce? Stall, string Motors) known))
        {
            RobotSettings? settings = ScenarioReader.Check(robot, _options).Robot ?? (Path.IsPathRooted(robot) ? null : ScenarioReader.Check(Path.Combine(_folder, robot), _options).Robot);
            known = (settings is null ? null : StallForce.Of(settings), PullNotes.Motors(settings));
            _robots[robot] = known;
            if (settings is null)
            {
                _notes.Add($"robot {robot} is neither a file nor in the garage: whether its motors limited a pull is not known");
            }
        }

        if (known.Stall is not null && row.Motors.Length > 0 && !row.Motors.Equals(known.Motors, StringComparison.OrdinalIgnoreCase))
        {
            if (_otherMotors.Add(robot))
            {
                _notes.Add($"{robot} had other motors than now in some pulls ({row.Motors}): whether they limited those is not known");
            }

            return null;
        }

        return known.Stall;
    }
}
