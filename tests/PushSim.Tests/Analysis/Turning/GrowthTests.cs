using System.Globalization;
using PushSim.Analysis.Turning;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Analysis.Turning;

/// <summary>Eigenvalues of the linearised steady turn against the simulation of a turn disturbed by 1e-4. Own check: two ways to one answer.</summary>
public class GrowthTests(ITestOutputHelper output)
{
    // Growth slower than this is the boundary [1/s].
    private const double Boundary = 1.0;

    private const int Cases = 200;

    // PUSHSIM_FULL=1 takes twice as many points of the grid
    private static readonly bool s_isFull = Environment.GetEnvironmentVariable("PUSHSIM_FULL") == "1";

    [Fact]
    public void Sign_of_growth_agrees_with_the_simulation_in_random_turns()
    {
        int tried = 0;
        int growing = 0;
        int ring = 0;
        List<string> wrong = [];
        for (int seed = 1; tried < Cases; seed++)
        {
            SteadyTurn? turn = RandomTurns.Turn(RandomTurns.Scenario(seed));
            Assert.True(turn is not null, $"seed {seed}: no steady turn found");
            if (Math.Abs(turn.Growth) < Boundary)
            {
                continue;
            }

            tried++;
            growing += turn.Growth > 0.0 ? 1 : 0;
            ring += turn.RingMargin < 1.0 == turn.Growth > 0.0 ? 1 : 0;
            DisturbedTurn simulated = Disturbance.Follow(turn, seed, 2.0);
            if (simulated.Sign != Math.Sign(turn.Growth))
            {
                wrong.Add(string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {turn.Growth} 1/s, simulated {simulated.Rate} 1/s"));
            }
        }

        output.WriteLine($"sign of growth as simulated in {Cases - wrong.Count} of {Cases} turns, of which {growing} grow; the tread ring alone says the same in {ring}");
        Assert.InRange(growing, Cases / 4, 3 * Cases / 4);
        Assert.True(wrong.Count <= Cases / 20, $"{wrong.Count} of {Cases} disagree: {string.Join("; ", wrong)}");
    }

    [Fact]
    public void Onset_in_damping_agrees_with_the_simulation_over_a_grid()
    {
        List<string> wrong = [];
        int points = 0;
        double[] slipSpeeds = s_isFull ? [0.35, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0] : [0.35, 0.5, 0.7, 1.0];
        foreach (double slipSpeed in slipSpeeds)
        {
            foreach (double turn in new[] { 0.4, 0.5, 0.6, 0.7, 0.8 })
            {
                ScenarioSettings scenario = TestRobots.Spot(TestRobots.FourWheels(Bouncy with { SlipSpeed = slipSpeed }, limit: 10.0), turn);
                points++;
                string at = string.Create(CultureInfo.InvariantCulture, $"slip speed {slipSpeed}, turn {turn}");
                double? onset = ChatterSearch.OnsetFactor(scenario, null, WorkBudget.Endless());
                if (onset is not double factor)
                {
                    wrong.Add(at + ": no onset");
                }
                else if (Sign(scenario, 0.9 * factor) != 1 || Sign(scenario, 1.1 * factor) != -1)
                {
                    wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{at}: onset {factor}, signs at 90 % and 110 %: {Sign(scenario, 0.9 * factor)}, {Sign(scenario, 1.1 * factor)}"));
                }
            }
        }

        Assert.Equal(5 * slipSpeeds.Length, points);
        Assert.True(wrong.Count == 0, string.Join("; ", wrong));
    }

    // the engine's own derivative at the steady turn must vanish, and with it every coordinate of the run must stay
    [Fact]
    public void A_steady_turn_stays_steady()
    {
        SteadyTurn turn = RandomTurns.Turn(TestRobots.Spot())!;
        double[] rates = turn.Model.Rates(turn.State);
        for (int i = 0; i < rates.Length; i++)
        {
            Assert.True(Math.Abs(rates[i]) < 1e-6 * turn.Model.Typical[i], $"state {turn.Model.Moving[i]} moves at {rates[i]}");
        }

        double settled = Simulator.Run(TestRobots.Spot()).Trace.Body.YawRate[^1];
        Assert.Equal(settled, turn.State[StateLayout.YawRate], 0.01 * Math.Abs(settled));
    }

    internal static TyreSettings Bouncy => TestRobots.SoftTyre with
    {
        StaticFriction = 1.0, KineticFriction = 0.6, BodyStiffness = 1500.0, BodyDamping = 0.5, TreadMass = 0.004,
    };

    private static int Sign(ScenarioSettings scenario, double factor)
    {
        ScenarioSettings scaled = TurnModel.With(scenario, t => t with { BodyDamping = factor * t.BodyDamping });
        return Disturbance.Follow(RandomTurns.Turn(scaled)!, 1, 3.0).Sign;
    }
}
