using PushSim.Analysis.Wear;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>Pictures of tyres: wear of each wheel, grip over many runs, materials compared.</summary>
public static class TyrePlots
{
    // Room for the names of wheels and of materials [px].
    private const double WheelMargin = 130.0;
    private const double MaterialMargin = 290.0;

    // Height of wear against grip, in usual panels [1].
    private const double TradeRows = 1.6;

    /// <summary>Wear of each wheel.</summary>
    /// <param name="report">The wear.</param>
    public static PlotSheet OfWear(WearResult report) => new(() => WearPanels(report));

    private static IReadOnlyList<Panel> WearPanels(WearResult report)
    {
        IReadOnlyList<WheelWear> wheels = report.Wheels;
        string match = FormattableString.Invariant($"in a match ({report.MatchTime:0.#} s of this manoeuvre)");
        Panel?[] panels =
        [
            report.TurnTime is not null
                ? Bars("Tread worn per turn of the robot", "Volume [mm³]", wheels, w => 1e9 * w.PerTurn)
                : Bars("Tread worn per minute of this manoeuvre", "Volume [mm³]", wheels, w => 1e9 * w.PerMinute),
            wheels.All(w => w.DepthPerVolume is not null) ? Bars("Tread depth worn " + match, "Depth [µm]", wheels, w => 1e6 * w.Depth(w.PerMatch)) : null,
            wheels.All(w => w.Density is not null) ? Bars("Material lost " + match, "Mass [mg]", wheels, w => 1e6 * w.Mass(w.PerMatch)) : null,
            wheels.All(w => w.MostPerStraightMetre is not null)
                ? Bars("For comparison: a metre straight ahead from rest wears at most", "Volume [10⁻⁶ mm³]", wheels, w => 1e15 * w.MostPerStraightMetre)
                : null,
        ];
        return [.. panels.OfType<Panel>()];
    }

    /// <summary>Grip after each run.</summary>
    /// <param name="series">The series.</param>
    /// <param name="wheels">Names of the wheels in its order.</param>
    public static PlotSheet OfGrip(GripSeries series, IReadOnlyList<string> wheels) => new(() => GripPanels(series, wheels));

    private static IReadOnlyList<Panel> GripPanels(GripSeries series, IReadOnlyList<string> wheels)
    {
        double[] run = [.. series.Runs.Select(r => (double)r.Run)];
        Panel grip = new("Grip after each run, share of the clean tyre's", "Run", "Grip [%]");
        grip.Add(run, [.. series.Runs.Select(r => 100.0 * r.Grip)], "all wheels");
        for (int i = 0; i < wheels.Count; i++)
        {
            int wheel = i;
            grip.Add(run, [.. series.Runs.Select(r => 100.0 * r.WheelGrip[wheel])], wheels[i]);
        }

        double limit = 100.0 * (1.0 - series.GripLoss);
        grip.Add([0.0, run[^1]], [limit, limit], FormattableString.Invariant($"{100.0 * series.GripLoss:0.#} % of grip lost"));
        Panel friction = new Panel("Sliding friction of all wheels together", "Run", "Friction [1]").Add(run, [.. series.Runs.Select(r => r.Friction)], "mean by load");
        foreach (GripAfterRun r in series.Runs.Where(r => r.IsCleaned))
        {
            grip.MarkTime(r.Run, "cleaned");
            friction.MarkTime(r.Run, "cleaned");
        }

        return [grip, friction];
    }

    /// <summary>Materials compared; null if none could be run.</summary>
    /// <param name="ranking">The materials.</param>
    public static PlotSheet? OfRanking(IReadOnlyList<RankedTyre> ranking) => ranking.Any(r => r.Stop is null) ? new PlotSheet(() => RankingPanels([.. ranking.Where(r => r.Stop is null)])) : null;

    private static IReadOnlyList<Panel> RankingPanels(List<RankedTyre> ran)
    {
        GripSeries? some = ran.FirstOrDefault(r => r.Grip is not null)?.Grip;
        Panel? traded = Traded(ran);
        Panel?[] panels =
        [
            traded,
            traded is null && ran.Any(r => r.DepthPerMatch is not null) ? Compared("Tread worn off the most worn wheel in a match", "Depth [µm]", ran, r => 1e6 * r.DepthPerMatch) : null,
            traded is null ? Compared("Sliding friction of the clean tyre on this floor", "Friction [1]", ran, r => r.CleanFriction) : null,
            some is null ? null : Compared($"The same after {some.Runs[^1].Run} runs on this dusty floor", "Friction [1]", ran, r => r.Grip?.Runs[^1].Friction ?? r.CleanFriction),
            ran.Any(r => r.Answers?.YawRate is not null) ? Compared("Yaw rate that the robot reaches with it", "Yaw rate [rad/s]", ran, r => Math.Abs(r.Answers?.YawRate ?? 0.0)) : null,
        ];
        return [.. panels.OfType<Panel>()];
    }

    // Wear against grip. Those have names that no other beats in both. Null where fewer than two materials have both.
    private static Panel? Traded(List<RankedTyre> ran)
    {
        (double X, double Y, string Name)[] both = [.. ran.Where(r => r.DepthPerMatch is not null && r.CleanFriction is not null).Select(r => (1e6 * r.DepthPerMatch!.Value, r.CleanFriction!.Value, r.Name))];
        return both.Length < 2 ? null : new Panel("Grip against wear: no other material beats a named one in both", "Tread worn in a match [µm]", "Sliding friction [1]").AddNamed([.. both.Select(m => m with { Name = both.Any(o => Beats(o, m)) ? "" : m.Name })]).WithRows(TradeRows);

        static bool Beats((double X, double Y, string Name) a, (double X, double Y, string Name) b) => a.X <= b.X && a.Y >= b.Y && (a.X < b.X || a.Y > b.Y);
    }

    private static Panel Bars(string title, string axis, IReadOnlyList<WheelWear> wheels, Func<WheelWear, double?> value) =>
        new Panel(title, axis, "").AddBars([.. wheels.Select(w => (w.Wheel, value(w) ?? 0.0, Figure(value(w))))], WheelMargin);

    private static Panel Compared(string title, string axis, List<RankedTyre> tyres, Func<RankedTyre, double?> value) =>
        new Panel(title, axis, "").AddBars([.. tyres.Select(t => (t.Name, value(t) ?? 0.0, value(t) is double v ? Figure(v) : "not known"))], MaterialMargin);

    private static string Figure(double? value) => PlainNumber.Of(value ?? 0.0, 3);
}
