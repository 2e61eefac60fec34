using PushSim.Analysis.Wear;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>The floor's abrasiveness from weighed tyres: closed forms, computed here by hand.</summary>
public class WeighedWearTests
{
    // two wheels that lose 3 mm3/s of 1.2 g/cm3 in all: 3.6 mg/s
    private static readonly WearResult s_report = new()
    {
        MatchTime = 60.0,
        TurnTime = null,
        Wheels =
        [
            new WheelWear("left", "soft", 4e-9, 0.6, 1e-9) { Density = 1200.0, PerMatch = 0.0 },
            new WheelWear("right", "soft", 8e-9, 1.2, 2e-9) { Density = 1200.0, PerMatch = 0.0 },
        ],
    };

    // 7.2 mg/s are twice what the run tells; 12 mm3 for 1.8 J of the run are then 24 for 1.8 J
    [Fact]
    public void The_ratio_of_losses_corrects_the_floor()
    {
        WeighedWear w = WeighedWear.Of([new Weighing(0.1, 0.1 - 720e-6, 100.0, 0.0), new Weighing(0.09, 0.09 - 360e-6, 50.0, 0.0)], s_report, 0.01)!;
        Assert.Equal(0.02, w.Abrasiveness.Value, 1e-12);
        Assert.Equal(0.02, w.Abrasiveness.Low, 1e-9);
        Assert.Equal(24e-9 / 1.8, w.PerWork, 1e-15);
        Assert.True(w.IsSeen);
    }

    // two rows of 100 s, 720 and 360 mg of 360 expected: 1.5 times in all, deviations of 180 mg, n/(n - 1) sum e^2 = 360^2 mg^2, times Student's 12.7062 of one degree of freedom, over 720 mg
    [Fact]
    public void The_interval_has_the_scatter_of_the_rows()
    {
        WeighedWear w = WeighedWear.Of([new Weighing(1.0, 1.0 - 720e-6, 100.0, 0.0), new Weighing(1.0, 1.0 - 360e-6, 100.0, 0.0)], s_report, 0.01)!;
        Assert.Equal(0.015, w.Abrasiveness.Value, 1e-12);
        Assert.Equal(0.015 + (0.01 * 12.7062 * 360.0 / 720.0), w.Abrasiveness.High, 1e-7);
        Assert.False(w.IsSeen);
    }

    // one row: two readings of a scale with steps of 10 mg have a deviation of step sqrt(2/12), 1.95996 of them either way
    [Fact]
    public void One_weighing_has_the_error_of_the_scale()
    {
        WeighedWear w = WeighedWear.Of([new Weighing(0.05, 0.05 - 36e-6, 100.0, 10e-6)], s_report, 0.01)!;
        Assert.Equal(1e-3, w.Abrasiveness.Value, 1e-9);
        Assert.Equal(1.95996 * 10.0 / Math.Sqrt(6.0) / 360.0 * 0.01, w.Abrasiveness.High - w.Abrasiveness.Value, 1e-8);
    }

    [Fact]
    public void A_tyre_without_density_gives_no_answer() =>
        Assert.Null(WeighedWear.Of([new Weighing(0.05, 0.049, 100.0, 1e-5)], s_report with { Wheels = [s_report.Wheels[0] with { Density = null }] }, 0.01));
}
