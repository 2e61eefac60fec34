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
}
