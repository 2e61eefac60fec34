using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Turning;

/// <summary>What a turn's recorded history says: each wheel, centre of rotation, paths, spectra.</summary>
internal static class TurnHistory
{
    // The centre of rotation is told while the yaw rate is above this share of its greatest [1], and above this [rad/s].
    private const double LeastShare = 0.05;
    private const double LeastRate = 0.02;

    public static TurnResult Read(RunHistory h, TurnEase ease)
    {
        int last = h.Time.Length - 1;
        int from = AnswerFinder.SettledFrom(h);
        double mean = h.Trace.Body.YawRate.Mean(from, last);
        ForceSpectrum[] spectra = Spectra(h, out double[] frequencies);
        (double[] X, double[] Y) centre = Centre(h);
        int[] told = [.. Enumerable.Range(from, last - from + 1).Where(i => double.IsFinite(centre.X[i]))];
        BatteryTrace? battery = h.Trace.Battery;
        return new TurnResult
        {
            Ease = ease,
            SettledFrom = h.Time[from],
            YawRateWithoutSlip = AnswerFinder.Sides(h, from, last) is var (difference, track) ? difference / track : 0.0,
            RotationCentre = told.Length == 0 || ease == TurnEase.CannotTurn ? null : (told.Average(i => centre.X[i]), told.Average(i => centre.Y[i])),
            RotationCentreOverTime = centre,
            ContactPaths = [.. h.Robot.Wheels.Select(w => Path(h, w))],
            Current = battery?.Current.Mean(from, last) ?? 0.0,
            Power = battery is null ? 0.0 : RunHistory.Mean([.. battery.Current.Zip(battery.Voltage, (i, v) => i * v)], from, last),
            LimitingShare = h.Trace.Controllers.Select(c => c.Limiting.Mean(from, last)).DefaultIfEmpty(0.0).Max(),
            Wheels = [.. h.Robot.Wheels.Select((_, i) => Wheel(h, i, from, last, Math.Sign(mean), spectra.Length > 0 ? spectra[i] : null))],
            Frequencies = frequencies,
            Spectra = spectra,
        };
    }

    private static WheelTurn Wheel(RunHistory h, int i, int from, int last, int sign, ForceSpectrum? spectrum)
    {
        WheelTrace wheel = h.Trace.Wheels[i];
        Series load = wheel.Load;
        double x = h.Robot.Wheels[i].X - h.Robot.Chassis.CentreOfMassX;
        double y = h.Robot.Wheels[i].Y - h.Robot.Chassis.CentreOfMassY;
        int lifts = 0;
        int air = 0;
        for (int k = from; k <= last; k++)
        {
            air += load[k] <= 0.0 ? 1 : 0;
            lifts += load[k] <= 0.0 && load[k - 1] > 0.0 ? 1 : 0;
        }

        double meanLoad = load.Mean(from, last);
        double meanFx = wheel.LongitudinalForce.Mean(from, last);
        double meanFy = wheel.LateralForce.Mean(from, last);
        return new WheelTurn(
            wheel.Name, meanLoad, load[from..].Min(), air / (last - from + 1.0), lifts, meanFx, meanFy, -sign * x * meanFy, -sign * y * meanFx,
            wheel.SlipSpeed.Mean(from, last), spectrum?.Swing ?? 0.0,
            spectrum is not null && ChatterFinder.IsLoud(spectrum, load, ChatterFinder.Window(h)) ? spectrum.Peak : null,
            wheel.Wear?[^1]);
    }

    private static ForceSpectrum[] Spectra(RunHistory h, out double[] frequencies)
    {
        (int first, int n) = ChatterFinder.Window(h);
        frequencies = [];
        if (n == 0)
        {
            return [];
        }

        double rate = 1.0 / (h.Time[1] - h.Time[0]);
        frequencies = ForceSpectrum.FrequenciesOf(n, rate);
        return [.. h.Trace.Wheels.Select(w => ForceSpectrum.Of(w, first, n, rate))];
    }

    // the body's velocity is zero where u - r y = 0 and v + r x = 0
    private static (double[] X, double[] Y) Centre(RunHistory h)
    {
        (Series rate, Series u, Series v) = (h.Trace.Body.YawRate, h.Trace.Body.Speed, h.Trace.Body.LateralSpeed);
        double least = Math.Max(LeastRate, LeastShare * rate.Max(Math.Abs));
        return (
            [.. rate.Select((r, i) => Math.Abs(r) < least ? double.NaN : -v[i] / r)],
            [.. rate.Select((r, i) => Math.Abs(r) < least ? double.NaN : u[i] / r)]);
    }

    private static (string Wheel, double[] X, double[] Y) Path(RunHistory h, Tyres.WheelSettings wheel)
    {
        (Series x, Series y, Series heading) = (h.Trace.Body.X, h.Trace.Body.Y, h.Trace.Body.Heading);
        double forward = wheel.X - h.Robot.Chassis.CentreOfMassX;
        double left = wheel.Y - h.Robot.Chassis.CentreOfMassY;
        return (
            wheel.Name,
            [.. x.Select((c, i) => c + (Math.Cos(heading[i]) * forward) - (Math.Sin(heading[i]) * left))],
            [.. y.Select((c, i) => c + (Math.Sin(heading[i]) * forward) + (Math.Cos(heading[i]) * left))]);
    }
}
