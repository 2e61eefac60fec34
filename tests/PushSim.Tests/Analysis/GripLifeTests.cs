using PushSim.Analysis.Wear;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Grip that nobody wipes, against the closed form of a dragged robot.</summary>
public class GripLifeTests
{
    private static ScenarioSettings Dusty(double dust, TyreLifeSettings? life = null) =>
        Dragged.Scenario(Dragged.Tyre() with { FoulingDistance = 1.0, DustyFriction = 0.5 }, 10.0, 0.5, 0.5, dust) with { TyreLife = life };

    // mu = 0.8 (1 - 0.5 (1 - exp(-n s))), s = 0.25 m a run; computed here. It has fallen by 20 % from n = 2.05 on, by 40 % from n = 6.4 on
    [Theory]
    [InlineData(0.2, 3)]
    [InlineData(0.4, 7)]
    public void It_follows_the_closed_form_however_often_the_scenario_cleans(double loss, int wipe)
    {
        GripLife life = GripLife.Of(Dusty(1.0, new TyreLifeSettings { Runs = 8, CleanEvery = 2, GripLoss = loss }), null, CancellationToken.None)!;
        Assert.Equal(0.8, life.Clean, 1e-12);
        Assert.Equal(0.8 * (1.0 - (0.5 * (1.0 - Math.Exp(-0.25)))), life.AfterOne, 0.004);
        Assert.Equal(0.8 * (1.0 - (0.5 * (1.0 - Math.Exp(-1.5)))), life.AfterSix, 0.008);
        Assert.Equal(wipe, life.WipeEvery);
    }

    [Fact]
    public void A_loss_that_does_not_come_is_none_and_the_usual_is_a_fifth_in_ten_runs()
    {
        GripLife life = GripLife.Of(Dusty(0.05), null, CancellationToken.None)!;
        Assert.Null(life.WipeEvery);
        Assert.Equal((0.2, 10), (life.GripLoss, life.Runs));
    }

    [Fact]
    public void Without_dust_or_fouling_it_is_not_known()
    {
        Assert.Null(GripLife.Of(Dusty(0.0), null, CancellationToken.None));
        ScenarioSettings plain = Dragged.Scenario(Dragged.Tyre(), 10.0, 0.5, 0.5, 1.0);
        Assert.Null(GripLife.Of(plain, null, CancellationToken.None));
    }
}
