using PushSim.Plotting.Drawing;
using PushSim.Words.Runs;

namespace PushSim.Plotting.Plots;

/// <summary>Panels of a turn: yaw rate, scrub, loads, centre of rotation, spectrum, path of each contact point, currents.</summary>
internal static class TurnPanels
{
    // Part of a spectrum below this share of its largest line says nothing more [1]; it is drawn at least up to this frequency [Hz].
    private const double Faint = 0.01;
    private const double LeastSpan = 100.0;

    public static IReadOnlyList<Panel> Of(RunResult r)
    {
        Panel yaw = Panel.OverTime("Yaw rate", "Yaw rate [rad/s]").Add(r.Time, r.Trace.Body.YawRate, "left turn positive");
        foreach (Mark mark in r.Marks)
        {
            yaw.MarkTime(mark.Time, RecordWords.Mark(mark.Kind));
        }

        Panel scrub = RunPanels.OfWheels(r.Trace, "Scrub: sideways force of each tyre", "Force [N]", w => w.LateralForce);
        Panel load = RunPanels.Load(r.Trace);
        List<Panel> panels = [yaw, scrub, load];
        if (r.Turning is TurnResult t)
        {
            AddCentre(r, t, panels);
            AddSpectrum(t, panels);
            panels.Add(Paths(r, t));
        }
        else if (!r.Scenario.Manoeuvre.Traits.IsOnTheSpot)
        {
            panels.Add(new Panel("Path of the centre of mass", "x [m]", "y [m]").Add(r.Trace.Body.X, r.Trace.Body.Y, "path").AsMap());
        }

        RunPanels.AddCurrents(r, panels);
        return panels;
    }

    private static void AddCentre(RunResult r, TurnResult t, List<Panel> panels)
    {
        (double[] x, double[] y) = t.RotationCentreOverTime;
        int[] told = [.. Enumerable.Range(0, x.Length).Where(i => double.IsFinite(x[i]))];
        if (told.Length > 1)
        {
            double[] time = [.. told.Select(i => r.Time[i])];
            panels.Add(Panel.OverTime("Centre of rotation, from the centre of mass", "Distance [mm]")
                .Add(time, [.. told.Select(i => x[i])], "ahead", 1e3)
                .Add(time, [.. told.Select(i => y[i])], "to the left", 1e3).WithSpan(0.0));
        }
    }

    private static void AddSpectrum(TurnResult t, List<Panel> panels)
    {
        if (t.Frequencies.Length == 0)
        {
            return;
        }

        int first = Array.FindIndex(t.Frequencies, f => f > 0.0);
        double largest = t.Spectra.Max(s => s.Amplitudes[first..].Max());
        int last = Enumerable.Range(first, t.Frequencies.Length - first)
            .Last(k => k == first || t.Frequencies[k] < LeastSpan || t.Spectra.Any(s => s.Amplitudes[k] > Faint * largest));
        Panel panel = new Panel("Spectrum of each tyre's force in the settled part", "Frequency [Hz]", "Amplitude [N]").WithRange(0.0);
        double[] frequencies = t.Frequencies[first..(last + 1)];
        foreach (ForceSpectrum s in t.Spectra)
        {
            panel.Add(frequencies, s.Amplitudes[first..(last + 1)], s.Wheel);
        }

        panels.Add(panel);
    }

    private static Panel Paths(RunResult r, TurnResult t)
    {
        Panel map = new Panel("Path of each contact point over the floor", "x [m]", "y [m]").AsMap(rows: 2.0);
        foreach ((string wheel, double[] x, double[] y) in t.ContactPaths)
        {
            map.Add(x, y, wheel);
        }

        return map.Add(r.Trace.Body.X, r.Trace.Body.Y, "centre of mass").AddPoints(t.ContactPaths.Select(p => (p.X[0], p.Y[0])), "start");
    }
}
