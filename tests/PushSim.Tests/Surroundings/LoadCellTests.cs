using PushSim.Surroundings;
using Xunit;

namespace PushSim.Tests.Surroundings;

/// <summary>What a load cell shows of known forces.</summary>
public class LoadCellTests
{
    private static readonly double[] s_uneven = [0.0, 0.003, 0.01, 0.011, 0.03, 0.05, 0.0501, 0.08];

    // First-order lag on a ramp of slope c from rest: c (t - tau (1 - exp(-t/tau))), a textbook closed form (from memory)
    [Fact]
    public void A_ramp_lags_by_its_closed_form()
    {
        const double tau = 0.02;
        double[] filtered = LoadCell.Filter(s_uneven, [.. s_uneven.Select(t => 40.0 * t)], tau);
        for (int i = 0; i < s_uneven.Length; i++)
        {
            double t = s_uneven[i];
            Assert.Equal(40.0 * (t - (tau * (1.0 - Math.Exp(-t / tau)))), filtered[i], 1e-13);
        }
    }

    [Fact]
    public void Without_a_filter_nothing_changes() => Assert.Equal([1.0, 5.0], LoadCell.Filter([0.0, 1.0], [1.0, 5.0], 0.0));

    // 5 N + 30 N/s t with a tare of 0.4 N, steps of 0.25 N, ten readings a second
    [Fact]
    public void Readings_come_at_the_cells_rate_with_tare_and_steps()
    {
        double[] time = [.. Enumerable.Range(0, 501).Select(i => 0.001 * i)];
        var cell = new LoadCellSettings { Rate = 10.0, Tare = 0.4, Resolution = 0.25 };
        IReadOnlyList<(double Time, double Force)> readings = LoadCell.Read(cell, time, [.. time.Select(t => 5.0 + (30.0 * t))]);
        Assert.Equal([0.0, 0.1, 0.2, 0.3, 0.4, 0.5], readings.Select(r => r.Time));
        Assert.Equal([5.5, 8.5, 11.5, 14.5, 17.5, 20.5], readings.Select(r => r.Force));
    }

    // Mean and standard deviation of 40,000 readings within five standard errors (computed here): 0.3/200 and 0.3/sqrt(80,000)
    [Fact]
    public void Noise_has_its_deviation_and_hangs_on_seed_and_number_alone()
    {
        const double noise = 0.3;
        var cell = new LoadCellSettings { Rate = 1000.0, Noise = noise, Seed = 3 };
        double[] Readings(double end, LoadCellSettings of) => [.. LoadCell.Read(of, [0.0, end], [2.0, 2.0]).Select(r => r.Force - 2.0)];
        double[] all = Readings(40.0, cell);
        double mean = all.Average();
        double deviation = Math.Sqrt(all.Average(v => (v - mean) * (v - mean)));
        Assert.InRange(mean, -5.0 * noise / 200.0, 5.0 * noise / 200.0);
        Assert.InRange(deviation, noise * (1.0 - (5.0 / Math.Sqrt(80_000.0))), noise * (1.0 + (5.0 / Math.Sqrt(80_000.0))));
        Assert.Equal(all[..1001], Readings(1.0, cell));
        Assert.NotEqual(all[..1001], Readings(1.0, cell with { Seed = 4 }));
    }
}
