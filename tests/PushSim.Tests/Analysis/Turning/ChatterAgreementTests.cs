using PushSim.Analysis.Meaning;
using PushSim.Analysis.Turning;
using PushSim.Analysis.Wear;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using Xunit;

namespace PushSim.Tests.Analysis.Turning;

/// <summary>One tyre in one turn has one verdict, whoever is asked: the review of a run, the ranking, the map, the fitted tyre on its robot.</summary>
public class ChatterAgreementTests
{
    // reduced count; PUSHSIM_CHATTERS=N compares N of them
    private static int Count => int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_CHATTERS"), out int n) ? n : 10;

    [Fact]
    public void Over_random_turns_all_say_the_same()
    {
        List<string> wrong = [];
        HashSet<ChatterKind> seen = [];
        for (int seed = 1; seed <= Count; seed++)
        {
            ScenarioSettings scenario = RandomTurns.Scenario(seed);
            RunResult run = Simulator.Run(scenario);
            ChatterVerdict own = ChatterReview.WithoutCure(run).Chatter;
            ChatterVerdict ranked = RankedTyre.Rank([("own", scenario, "")], false, CancellationToken.None)[0].Chatter;
            ChatterKind mapped = StabilityMap.Compute([1.0], [1.0], (_, _) => scenario, 2, 2).Points[0, 0]!.Chatter;
            seen.Add(own.Kind);
            if (ranked with { Cure = null } != own || mapped != own.Kind)
            {
                wrong.Add($"seed {seed}: {own}, ranked {ranked}, map {mapped}");
            }

            // what the run shows is never denied
            if (run.Answers.Chatter is not null && (own.Kind != ChatterKind.Buzzes || own.Frequency != run.Answers.Chatter))
            {
                wrong.Add($"seed {seed}: the run chatters at {run.Answers.Chatter} Hz, told {own}");
            }
        }

        Assert.True(wrong.Count == 0, string.Join("; ", wrong));
        Assert.Superset(new HashSet<ChatterKind> { ChatterKind.Buzzes, ChatterKind.Close, ChatterKind.Quiet }, seen);
    }

    [Fact]
    public void A_fitted_tyre_on_its_robot_is_told_as_the_same_turn_is()
    {
        HashSet<ChatterKind> seen = [];
        for (int seed = 1; seed <= 4; seed++)
        {
            RobotSettings robot = RandomTurns.Scenario(seed).Robot;
            FittedTyre tyre = new("random", 1.0, 0.8, 0.0, IsAtLeast: false, IsMaterialKnown: true);
            var turn = new ScenarioSettings
            {
                Name = "spot", Robot = robot, Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.Spot, Commands = [new CommandPoint(0.05, 0.0, 1.0)], EndTime = 2.0 },
            };
            ChatterVerdict own = ChatterReview.Of(Simulator.Run(turn));
            Assert.Equal(own, MeaningFinder.Find(robot, tyre, null, new FloorSettings(), null, default).Chatter);
            seen.Add(own.Kind);
        }

        Assert.True(seen.Count > 1, "all alike");
        TyreUnknown();

        static void TyreUnknown()
        {
            FittedTyre tyre = new("random", 1.0, 0.8, 0.0, IsAtLeast: false, IsMaterialKnown: false);
            ChatterVerdict verdict = MeaningFinder.Find(RandomTurns.Scenario(1).Robot, tyre, null, new FloorSettings(), null, default).Chatter;
            Assert.Equal(ChatterVerdict.Unknown(ChatterDoubt.Material), verdict);
        }
    }

    // own check: the change that is told to tip it does, and the cure that is told is just enough
    [Fact]
    public void Tip_and_cure_do_what_is_said_of_them()
    {
        int tips = 0;
        int cures = 0;
        for (int seed = 1; seed <= Count; seed++)
        {
            ScenarioSettings scenario = RandomTurns.Scenario(seed);
            ChatterVerdict verdict = ChatterReview.Of(Simulator.Run(scenario));
            if (verdict.Tip is ChatterChange tip)
            {
                tips++;
                double beyond = Math.Pow(tip.Factor, 1.1);
                Assert.NotEqual(ChatterKind.Buzzes, verdict.Kind);
                Assert.Equal(ChatterKind.Buzzes, Kind(scenario, tip.Part, tip.Factor < 1.0 ? Math.Min(beyond, 0.97 * tip.Factor) : Math.Max(beyond, 1.03 * tip.Factor)));
            }

            if (verdict.Cure is ChatterChange cure)
            {
                cures++;
                Assert.Equal(ChatterKind.Quiet, Kind(scenario, cure.Part, cure.Factor));
                Assert.NotEqual(ChatterKind.Quiet, Kind(scenario, cure.Part, cure.Factor / 1.06));
            }
        }

        Assert.True(tips > 0 && cures > 1, $"{tips} tips, {cures} cures");

        static ChatterKind Kind(ScenarioSettings scenario, ChatterPart part, double factor) =>
            ChatterReview.WithoutCure(Simulator.Run(TyreNumber.Of(part).Scaled(scenario, factor))).Chatter.Kind;
    }

    [Fact]
    public void What_cannot_be_said_is_told_with_its_cause()
    {
        ScenarioSettings spot = TestRobots.Spot();
        Assert.Equal(ChatterVerdict.Unknown(ChatterDoubt.NoSteadyTurn, NoModesCause.UnevenFloor), ChatterReview.Of(Simulator.Run(spot with { Floor = spot.Floor with { SlopeX = 0.02 } })));
        Assert.Equal(ChatterVerdict.Unknown(ChatterDoubt.NoSteadyTurn, NoModesCause.CannotTurn), ChatterReview.Of(Simulator.Run(TestRobots.Spot(TestRobots.FourWheels(limit: 0.2)))));
        Assert.Equal(ChatterVerdict.Unknown(ChatterDoubt.Stopped), ChatterReview.Of(Simulator.Run(spot) with { Status = RunStatus.Failed }));
        Assert.Equal(ChatterDoubt.TooShort, ChatterReview.Of(Simulator.Run(spot with { Numerics = spot.Numerics with { SampleRate = 50.0 } })).Doubt);
    }
}
