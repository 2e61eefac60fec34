using PushSim.Analysis.Chance;
using PushSim.Analysis.Meaning;
using PushSim.Analysis.Statistics;
using PushSim.Words.Runs;
using PushSim.Words.Tables;
using PushSim.Words.Wear;

namespace PushSim.Words.Fits;

/// <summary>What the fitted tyres make of the robot, as tables.</summary>
public static class MeaningTables
{
    /// <summary>The tables: the robot as it is, then with the stronger motors.</summary>
    /// <param name="r">The robot on each tyre.</param>
    /// <param name="usual">Tolerances that the shoves took because no file states one; empty for none.</param>
    public static IEnumerable<AnswerTable> Tables(RobotMeaning r, string usual = "")
    {
        foreach (IGrouping<bool, TyreMeaning> motors in r.Tyres.GroupBy(t => t.IsStronger))
        {
            bool isLast = motors.Key || r.Stronger is null;
            AnswerTable table = Table(r, motors.Key, [.. motors]);
            table.AddRemark(motors.Key ? MeaningWords.Gain(r) : MeaningWords.Limits([.. motors], r.Robot));

            if (isLast)
            {
                AddEnd(table, r, usual);
            }

            yield return table;
        }

        if (GripWords.Table([.. r.Tyres.Where(t => !t.IsStronger).Select(t => (t.Tyre.Name, t.Life))]) is AnswerTable grip)
        {
            yield return grip;
        }
    }

    private static AnswerTable Table(RobotMeaning r, bool isStronger, TyreMeaning[] tyres)
    {
        AnswerTable table = new AnswerTable(isStronger ? Text($"{r.Stronger:0.##} x motor") : "On " + r.Robot).AddColumn("Tyre")
            .AddNumberColumn("1 m [s]").AddColumn("Spot turn").AddNumberColumn("Buzz [Hz]").AddNumberColumn("Wear [mm³/min]");
        bool hasShoves = r.Opponent.Length > 0;
        if (hasShoves)
        {
            table.AddNumberColumn("Won [%]").AddNumberColumn("95 %");
        }

        table.AddColumn("Set by");
        foreach (TyreMeaning t in tyres)
        {
            List<string> cells =
            [
                t.Tyre.Name, t.FirstMetre?.ToString("0.000", CultureInfo.InvariantCulture) ?? "never", t.Turn is TurnEase e ? MeaningWords.Of(e) : "not run",
                t.Turn is null ? "" : ChatterWords.Cell(t.Chatter), t.WearPerMinute is double v ? (1e9 * v).ToString("0.0", CultureInfo.InvariantCulture) : "not known",
            ];
            if (hasShoves)
            {
                Bounds? share = t.WinShare;
                double? won = share is null ? null : 100.0 * t.Shoves!.Share(t.Shoves.Wins);
                cells.Add(won is null ? "none ran" : Text($"{(t.Tyre.IsAtLeast ? ">= " : "")}{won:0.0}"));
                cells.Add(share is { } i ? IntervalWords.Of(new Interval(won!.Value, 100.0 * i.Low, 100.0 * i.High), "0.0") : "");
            }

            cells.Add(t.Bound.Count > 0 && !t.IsOpen ? string.Join(", then ", t.Bound.Select(b => BindingTable.Words(b.Kind))) : "not known");
            table.AddRow([.. cells]);
        }

        table.AddRemarks(tyres.Where(t => t.Chatter.Kind is ChatterKind.Buzzes or ChatterKind.Close).Select(t => t.Tyre.Name + ChatterWords.Clause(t.Chatter).Replace("; its tyres", ": its tyres", StringComparison.Ordinal) + "."));
        table.AddRemarks(tyres.Where(t => t.Stop is not null).Select(t => $"{t.Tyre.Name}: {RunWords.Cause(t.Stop)}"));
        table.AddRemarks(tyres.Where(t => t.Shoves is { Failed: > 0 }).Select(t => Text($"{t.Tyre.Name}: {t.Shoves!.Failed} of {r.Shoves} shoves could not be run and do not count.")));

        return table;
    }

    private static void AddEnd(AnswerTable table, RobotMeaning r, string usual)
    {
        foreach ((string tyre, string reason) in r.LeftOut)
        {
            table.AddRemark($"{tyre} is not put on the robot: {reason}.");
        }

        string[] bounds = [.. r.Tyres.Where(t => t.Tyre.IsAtLeast && !t.IsStronger).Select(t => t.Tyre.Name)];
        if (bounds.Length > 0)
        {
            table.AddRemark($"{string.Join(", ", bounds)}: friction is only known to be at least the fitted one. It wins at least what is shown, since more grip only wins more; metre, turn, buzz and wear are those at this friction.");
        }

        string[] unknown = [.. r.Tyres.Where(t => !t.Tyre.IsMaterialKnown && !t.IsStronger).Select(t => t.Tyre.Name)];
        if (unknown.Length > 0)
        {
            table.AddRemark($"what {string.Join(", ", unknown)} {(unknown.Length == 1 ? "is" : "are")} made of is not known, so buzz, wear and grip over runs are not, and the rest takes the stiffness of the tyre replaced: give --material, or name the tyre as in the robot file.");
        }

        table.AddRemark("1 m: the first metre at full throttle from rest. Spot turn, buzz (chatter of the tyres) and wear: full turn on the spot. The floor is level and that of the pulls. Set by: what binds the standing push. The tables to paste are what was run.", isAside: true);
        if (r.Opponent.Length > 0)
        {
            table.AddRemark(Text($"Won: {r.Shoves} shoves a row against {r.Opponent}, drawn as odds and ladder draw them, contest {r.Contest}, seed {r.Seed}, the same draws for every row; interval: Wilson score. Computed in {r.Seconds:0.0} s. {usual}").TrimEnd(), isAside: true);
        }

        if (r.Tyres.Any(t => t.WearPerMinute is not null))
        {
            table.AddRemark(WearWords.Limits, isAside: true);
        }
    }
}
