using MathNet.Numerics.Distributions;
using PushSim.Analysis.Fit;
using PushSim.Surroundings;

namespace PushSim.Tests.Analysis;

/// <summary>
/// The log of an invented pull test through a cheap load cell: 10 or 80 readings a second, noise, drift, resolution, tare, ragged
/// sliding, and some scatter from pull to pull. Its forces are given, not simulated by the engine, so that the truth is known exactly.
/// </summary>
internal sealed record SimulatedLog(ForceTrace Trace, double Load, double Kinetic, double Static, int Pulls, double Rate)
{
    private const double FineRate = 1000.0;

    public static SimulatedLog Make(int seed)
    {
        var random = new Random(seed);
        double U(double a, double b) => a + ((b - a) * random.NextDouble());
        double load = U(2.0, 15.0);
        double kinetic = U(0.25, 1.3);
        double ratio = U(1.12, 1.5);
        double rate = random.Next(2) == 0 ? 10.0 : 80.0;
        int pulls = random.Next(2) == 0 ? 1 : random.Next(3, 7);
        double scatter = pulls == 1 ? 0.0 : U(0.005, 0.04);
        double texture = random.Next(2) == 0 ? 0.0 : U(0.003, 0.02);
        double drift = U(-0.01, 0.01);
        List<double> force = [];
        Add(U(1.5, 4.0), _ => 0.0);
        for (int p = 0; p < pulls; p++)
        {
            double k = kinetic * load * (1.0 + (scatter * Normal.Sample(random, 0.0, 1.0)));
            double s = kinetic * ratio * load * (1.0 + (scatter * Normal.Sample(random, 0.0, 1.0)));
            double ramp = rate < 20.0 ? U(1.2, 4.0) : U(0.5, 3.0);
            double decay = U(0.01, 0.06);
            double release = U(0.05, 0.3);
            double correlation = Math.Exp(-1.0 / (FineRate * U(0.005, 0.03)));
            double rough = 0.0;
            Add(ramp, t => s * t / ramp);
            Add(U(2.0, 6.0), t =>
            {
                rough = (correlation * rough) + (Math.Sqrt(1.0 - (correlation * correlation)) * Normal.Sample(random, 0.0, texture * k));
                return k + ((s - k) * Math.Exp(-t / decay)) + rough;
            });
            Add(release, t => k * (1.0 - (t / release)));
            Add(U(1.5, 4.0), _ => 0.0);
        }

        double[] time = [.. force.Select((_, i) => i / FineRate)];
        double[] drifted = [.. force.Select((f, i) => f + (drift * time[i]))];
        double[] steps = [0.001, 0.01, 0.02];
        var cell = new LoadCellSettings { Rate = rate, Noise = U(0.003, 0.04), Resolution = steps[random.Next(3)], Tare = U(-1.0, 1.0), Seed = (ulong)seed };

        // the log does not begin with the pull's own clock
        int phase = random.Next((int)(FineRate / rate));
        IReadOnlyList<(double Time, double Force)> readings = LoadCell.Read(cell, [.. time.Take(time.Length - phase)], [.. drifted.Skip(phase)]);
        var trace = new ForceTrace { Time = [.. readings.Select(r => r.Time)], Force = [.. readings.Select(r => r.Force)] };
        return new SimulatedLog(trace, load, kinetic, kinetic * ratio, pulls, rate);

        void Add(double duration, Func<double, double> value)
        {
            int n = (int)(duration * FineRate);
            for (int i = 0; i < n; i++)
            {
                force.Add(value(i / FineRate));
            }
        }
    }
}
