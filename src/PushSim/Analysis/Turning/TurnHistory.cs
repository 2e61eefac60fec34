using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Turning;

/// <summary>What a turn's recorded history says: each wheel, centre of rotation, paths, spectra.</summary>
internal static class TurnHistory
{
    // Swing of a tyre force, as a share of its mean load, above which it is chatter [1].
    private const double Chatters = 0.05;

    // The centre of rotation is told while the yaw rate is above this share of its greatest [1], and above this [rad/s].
    private const double LeastShare = 0.05;
    private const double LeastRate = 0.02;

    public static TurnReport Read(RunHistory h, TurnEase ease)
    {
        int last = h.Time.Length - 1;
        double start = AnswerFinder.FirstCommand(h);
        int from = h.IndexAt(h.Time[last] - (AnswerFinder.SettledShare * (h.Time[last] - start)));
        double[] rate = h["yaw_rate_rad_per_s"];
        double mean = RunHistory.Mean(rate, from, last);
        ForceSpectrum[] spectra = Spectra(h, from, last, out double[] frequencies);
        (double[] X, double[] Y) centre = Centre(h);
        int[] told = [.. Enumerable.Range(from, last - from + 1).Where(i => double.IsFinite(centre.X[i]))];
        Channel? current = h.Find("battery_current_a");
        return new TurnReport
        {
            Ease = ease,
            SettledFrom = h.Time[from],
            YawRateWithoutSlip = AnswerFinder.Sides(h, from, last) is var (difference, track) ? difference / track : 0.0,
            RotationCentre = told.Length == 0 || ease == TurnEase.CannotTurn ? null : (told.Average(i => centre.X[i]), told.Average(i => centre.Y[i])),
            RotationCentreOverTime = centre,
            ContactPaths = [.. h.Robot.Wheels.Select(w => Path(h, w))],
            Current = current is null ? 0.0 : RunHistory.Mean(current.Values, from, last),
            Power = current is null ? 0.0 : RunHistory.Mean([.. current.Values.Zip(h["battery_voltage_v"], (i, v) => i * v)], from, last),
            LimitingShare = h.Robot.Controllers.Count == 0 ? 0.0 : h.Robot.Controllers.Max(c => RunHistory.Mean(h[$"controller_{Slug.Of(c.Name)}_limiting"], from, last)),
            Wheels = [.. h.Robot.Wheels.Select((_, i) => Wheel(h, i, from, last, Math.Sign(mean), spectra.Length > 0 ? spectra[i] : null))],
            Frequencies = frequencies,
            Spectra = spectra,
        };
    }

    private static WheelTurn Wheel(RunHistory h, int i, int from, int last, int sign, ForceSpectrum? spectrum)
    {
        double[] load = h.Wheel(i, "load_n");
        double[] fx = h.Wheel(i, "longitudinal_force_n");
        double[] fy = h.Wheel(i, "lateral_force_n");
        double x = h.Robot.Wheels[i].X - h.Robot.Chassis.CentreOfMassX;
        double y = h.Robot.Wheels[i].Y - h.Robot.Chassis.CentreOfMassY;
        int lifts = 0;
        int air = 0;
        for (int k = from; k <= last; k++)
        {
            air += load[k] <= 0.0 ? 1 : 0;
            lifts += load[k] <= 0.0 && load[k - 1] > 0.0 ? 1 : 0;
        }

        double meanLoad = RunHistory.Mean(load, from, last);
        double meanFx = RunHistory.Mean(fx, from, last);
        double meanFy = RunHistory.Mean(fy, from, last);
        string name = h.Robot.Wheels[i].Name;
        return new WheelTurn(
            name, meanLoad, load.AsSpan(from).ToArray().Min(), air / (last - from + 1.0), lifts, meanFx, meanFy, -sign * x * meanFy, -sign * y * meanFx,
            RunHistory.Mean(h.Wheel(i, "tread_slip_speed_m_per_s"), from, last), spectrum?.Swing ?? 0.0,
            spectrum is not null && spectrum.Swing > Chatters * meanLoad ? spectrum.Peak : null,
            h.Find($"wheel_{Slug.Of(name)}_wear_m3")?.Values[^1]);
    }

    private static ForceSpectrum[] Spectra(RunHistory h, int from, int last, out double[] frequencies)
    {
        int n = ForceSpectrum.Length(last - from + 1);
        frequencies = [];
        if (n == 0)
        {
            return [];
        }

        double rate = 1.0 / (h.Time[1] - h.Time[0]);
        frequencies = ForceSpectrum.FrequenciesOf(n, rate);
        int first = last - n + 1;
        return [.. h.Robot.Wheels.Select((w, i) => ForceSpectrum.Of(
            w.Name, h.Wheel(i, "longitudinal_force_n").AsSpan(first, n), h.Wheel(i, "lateral_force_n").AsSpan(first, n), rate))];
    }

    // the body's velocity is zero where u - r y = 0 and v + r x = 0
    private static (double[] X, double[] Y) Centre(RunHistory h)
    {
        double[] rate = h["yaw_rate_rad_per_s"];
        double[] u = h["speed_m_per_s"];
        double[] v = h["lateral_speed_m_per_s"];
        double least = Math.Max(LeastRate, LeastShare * rate.Max(Math.Abs));
        return (
            [.. rate.Select((r, i) => Math.Abs(r) < least ? double.NaN : -v[i] / r)],
            [.. rate.Select((r, i) => Math.Abs(r) < least ? double.NaN : u[i] / r)]);
    }

    private static (string Wheel, double[] X, double[] Y) Path(RunHistory h, Tyres.WheelSettings wheel)
    {
        double[] x = h["x_m"];
        double[] y = h["y_m"];
        double[] heading = h["heading_rad"];
        double forward = wheel.X - h.Robot.Chassis.CentreOfMassX;
        double left = wheel.Y - h.Robot.Chassis.CentreOfMassY;
        return (
            wheel.Name,
            [.. x.Select((c, i) => c + (Math.Cos(heading[i]) * forward) - (Math.Sin(heading[i]) * left))],
            [.. y.Select((c, i) => c + (Math.Sin(heading[i]) * forward) + (Math.Cos(heading[i]) * left))]);
    }
}
