using PushSim.Binding;
using PushSim.Plotting.Drawing;
using PushSim.Simulation;

namespace PushSim.Plotting.Plots;

/// <summary>Panels that show what bound each wheel: bands per wheel, and the run's main curve shaded by what bound most of its force.</summary>
internal static class BindingPanels
{
    // Shorter stretches are joined to what came before, so that bands stay readable, as a share of the picture's time [1].
    private const double ShortestShare = 0.004;

    // Order of the kinds' colours, none of them a robot's; nothing stays white.
    private static readonly OxyColor[] s_colours =
    [
        OxyColors.White, OxyColor.FromRgb(205, 190, 150), OxyColor.FromRgb(188, 150, 200), OxyColor.FromRgb(140, 50, 100), OxyColor.FromRgb(235, 225, 110),
        OxyColor.FromRgb(0, 134, 106), OxyColor.FromRgb(150, 158, 168), OxyColor.FromRgb(70, 70, 70),
    ];

    /// <summary>The run's main curve shaded, and the bands.</summary>
    public static IReadOnlyList<Panel> Of(RunResult run)
    {
        (Series series, string title, string axis) = Main(run);
        Panel main = Panel.OverTime($"{title}, shaded by what binds most of the force", axis).Add(run.Time, series, title.ToLowerInvariant());
        Shade(main, run);
        return [main, Bands(run)];
    }

    /// <summary>What binds when, where the robot drives: the main panel shaded, and a band a wheel.</summary>
    public static void AddTo(RunResult r, Panel main, List<Panel> panels)
    {
        // a robot that is dragged is commanded nothing: nothing of its drive binds
        if (r.Scenario.Robot.Controllers.Count > 0 && !r.Scenario.Manoeuvre.Traits.IsDragged)
        {
            Shade(main, r);
            panels.Add(Bands(r));
        }
    }

    private static void Shade(Panel main, RunResult run)
    {
        HashSet<BindingKind> seen = [];
        foreach ((double from, double to, BindingKind kind) in Spans(run.Time, BindingSpans.Leading(run.Bindings)))
        {
            main.Shade(from, to, s_colours[(int)kind]);
            seen.Add(kind);
        }

        main.WithKey([.. seen.Where(k => k != BindingKind.Nothing).Order().Select(k => (BindingTable.WheelWords(k), s_colours[(int)k]))]);
    }

    private static Panel Bands(RunResult run)
    {
        HashSet<BindingKind> seen = [];
        IReadOnlyList<BindingMoments> wheels = run.Bindings;
        Panel bands = Panel.OverTime("What binds each wheel", "").WithWords([.. wheels.Select(w => run.Scenario.Robot.Wheels[w.Wheel].Name).Reverse()]).WithRows(0.5 + (0.12 * wheels.Count));
        for (int w = 0; w < wheels.Count; w++)
        {
            double row = wheels.Count - 1 - w;
            foreach ((double from, double to, BindingKind kind) in Spans(run.Time, wheels[w].Kinds))
            {
                bands.Band(from, to, row - 0.36, row + 0.36, s_colours[(int)kind]);
                seen.Add(kind);
            }
        }

        return bands.WithKey([.. seen.Order().Select(k => (BindingTable.WheelWords(k), s_colours[(int)k]))]).WithSpan(run.Time[0], run.Time[^1]);
    }

    private static (Series Series, string Title, string Axis) Main(RunResult run)
    {
        if (run.Trace.Tether is { } tether)
        {
            return (tether.Force, "Pull on the tether", "Force [N]");
        }

        return run.Scenario.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn
            ? (run.Trace.Body.YawRate, "Yaw rate", "Yaw rate [rad/s]")
            : (run.Trace.Body.Speed, "Speed of the robot", "Speed [m/s]");
    }

    /// <summary>Stretches of time over which one thing binds, the shortest joined to the one before.</summary>
    /// <param name="time">Samples [s].</param>
    /// <param name="moments">What binds at each of them.</param>
    internal static List<(double From, double To, BindingKind Kind)> Spans(IReadOnlyList<double> time, IReadOnlyList<BindingKind> moments)
    {
        double shortest = ShortestShare * (time[^1] - time[0]);
        List<(double From, double To, BindingKind Kind)> spans = [];
        int from = 0;
        for (int i = 1; i <= moments.Count; i++)
        {
            if (i < moments.Count && moments[i] == moments[from])
            {
                continue;
            }

            double end = time[Math.Min(i, moments.Count - 1)];
            bool isShort = end - time[from] < shortest;
            if (spans.Count > 0 && (isShort || spans[^1].Kind == moments[from]))
            {
                spans[^1] = spans[^1] with { To = end };
            }
            else
            {
                spans.Add((time[from], end, moments[from]));
            }

            from = i;
        }

        return spans;
    }
}
