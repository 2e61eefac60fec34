using PushSim.Analysis.Wear;
using PushSim.Runs;
using PushSim.Scenarios.Estimates;
using PushSim.Simulation;
using PushSim.Tests.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Analysis;

public class GripSeriesTests
{
    private static TyreSettings Dusty(double distance, double ratio) => Dragged.Tyre() with { FoulingDistance = distance, DustyFriction = ratio };

    // D' = (|v_p|/L_d)(1 - D) over a slide s: D = 1 - exp(-s/L_d), and the drag falls with it; computed here
    [Theory]
    [InlineData(1.0)]
    [InlineData(3.0)]
    public void Grip_fades_exponentially_with_the_way_slid(double dust)
    {
        RunResult run = ExternalRobots.Run(Dragged.Scenario(Dusty(2.0, 0.6), 10.0, 0.5, 4.0, dust));
        Assert.All(new[] { 200, 400, 800 }, i =>
        {
            // the first millimetre only leans tyre body and tread: mu N/k_c + z_max
            double lean = ((0.8 * 2.5 / 2500.0) + 0.3e-3) * (1.0 - (0.4 * run.Trace.Wheel("front left").Fouling![i]));
            double slid = run.Trace.Body.X[i] - run.Trace.Body.X[0] - lean;
            double fouling = 1.0 - Math.Exp(-slid * dust / 2.0);
            Assert.Equal(fouling, run.Trace.Wheel("front left").Fouling![i], 2e-4);
            double force = 0.8 * 10.0 * (1.0 - (0.4 * fouling));
            Assert.Equal(force, run.Trace.Tether!.Force[i], 0.004 * force);
        });
    }

    // dragged the same way in every run: after n runs 1 - exp(-n s/L_d), a cleaning takes its share off; computed here
    [Fact]
    public void Over_runs_it_follows_the_closed_form_with_cleaning()
    {
        var life = new TyreLifeSettings { Runs = 6, CleanEvery = 4, CleaningShare = 0.75, GripLoss = 0.2 };
        ScenarioSettings s = Dragged.Scenario(Dusty(1.0, 0.5), 10.0, 0.5, 0.5, 1.0) with { TyreLife = life };
        GripSeries series = GripSeries.Of(s, null, CancellationToken.None)!;

        // the anchor moves 250 mm; tether and tread stretch by the first few millimetres, a little less as grip fades
        RunResult one = ExternalRobots.Run(s);
        double slid = one.Trace.Body.X[^1] - one.Trace.Body.X[0];
        double fouling = 0.0;
        foreach (GripAfterRun r in series.Runs)
        {
            fouling = r.Run == 0 ? 0.0 : r.IsCleaned ? 0.25 * fouling : 1.0 - ((1.0 - fouling) * Math.Exp(-slid));
            Assert.Equal(1.0 - (0.5 * fouling), r.Grip, 0.004);
            Assert.All(r.WheelGrip, g => Assert.Equal(r.Grip, g, 1e-3));
            Assert.Equal(0.8 * r.Grip, r.Friction, 1e-12);
        }

        Assert.Equal([0, 1, 2, 3, 4, 4, 5, 6], series.Runs.Select(r => r.Run));
        Assert.Equal([4], series.Runs.Where(r => r.IsCleaned).Select(r => r.Run));

        // 1 - 0.5 (1 - exp(-0.25 n)) <= 0.8 from n = 2.05 on
        Assert.Equal(3, series.RunsUntilLoss);
    }

    [Fact]
    public void A_coating_that_fouls_at_once_loses_its_grip_first()
    {
        int? Runs(double distance) => GripSeries.Of(
            Dragged.Scenario(Dusty(distance, 0.5), 10.0, 0.5, 0.5, 1.0) with { TyreLife = new TyreLifeSettings { Runs = 8 } }, null, CancellationToken.None)!.RunsUntilLoss;
        Assert.Equal(1, Runs(0.05));
        Assert.InRange(Runs(2.0)!.Value, 3, 7);
        Assert.Null(Runs(50.0));
    }

    [Fact]
    public void On_a_clean_floor_there_is_no_series() =>
        Assert.Null(GripSeries.Of(Dragged.Scenario(Dusty(1.0, 0.5), 10.0, 0.5, 0.5), null, CancellationToken.None));

    // mu (N/(f N0))^-p: twice the load gives 2^(1 - p) the drag, p of either sign; half the face acts as twice the load (algebra)
    [Theory]
    [InlineData(0.2)]
    [InlineData(-0.2)]
    [InlineData(0.0)]
    public void Drag_against_load_and_tread_area(double p)
    {
        double Drag(double weight, double area) => ExternalRobots.Run(Dragged.Scenario(Dragged.Tyre() with { LoadExponent = p, TreadArea = area }, weight, 0.5, 1.0)).Trace.Tether!.Force[^1];
        double one = Drag(10.0, 1.0);
        Assert.Equal(Math.Pow(2.0, 1.0 - p), Drag(20.0, 1.0) / one, 0.002);
        Assert.Equal(Math.Pow(2.0, -p), Drag(10.0, 0.5) / one, 0.002);
        Assert.Equal(one, 10.0 * GripSeries.SlidingFriction(Dragged.Tyre() with { LoadExponent = p }, 2.5), 0.002 * one);
    }

    // grooves over half of the face halve modulus and mass of the cover, as if they went down to the hub
    [Fact]
    public void A_tread_pattern_softens_the_cover()
    {
        TyreData slick = new() { Name = "t", Radius = 0.026, Load = 3.3, Width = 0.022, Thickness = 0.009, Material = CoverMaterial.ClosedFoam, Modulus = 0.6e6, Density = 120.0, Rebound = 0.7 };
        TyreEstimate half = TyreFromData.Estimate(slick with { TreadArea = 0.5 });
        TyreEstimate soft = TyreFromData.Estimate(slick with { Modulus = 0.3e6 });
        Assert.Equal(soft.BodyStiffness!.Value, half.BodyStiffness!.Value, 1e-9 * soft.BodyStiffness.Value);
        Assert.Equal(soft.VerticalStiffness!.Value, half.VerticalStiffness!.Value, 1e-9 * soft.VerticalStiffness.Value);
        Assert.Equal(0.5 * soft.TreadMass!.Value, half.TreadMass!.Value, 1e-12);
        Assert.True(half.BodyStiffness.Value < 0.9 * TyreFromData.Estimate(slick).BodyStiffness!.Value);
    }
}
