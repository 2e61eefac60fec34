using System.Globalization;
using PushSim.Analysis.Chance;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Starters;
using PushSim.Scenarios.Studies;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>
/// Advice against brute force over random garages: every change plays many matches of other seeds, without screening and pairing. `PUSHSIM_GARAGES=1-50` plays the garages of those seeds, fixed
/// beforehand; the usual run plays the first, with fewer changes and matches. The summary stands in src/docs/decisions/11-garage.md.
/// </summary>
public sealed class AdviceTests(ITestOutputHelper output) : IDisposable
{
    private const int Offered = 6, OfferedUsually = 3;

    private static readonly int[] s_range = [.. (Environment.GetEnvironmentVariable("PUSHSIM_GARAGES") ?? "1-1").Split('-').Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
    private static readonly bool s_isLong = s_range[1] > s_range[0];

    private readonly string _folder = Directory.CreateTempSubdirectory("advice").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_best_change_is_that_of_brute_force()
    {
        (int agreed, int held, int all) = (0, 0, 0);
        for (int seed = s_range[0]; seed <= s_range[1]; seed++)
        {
            ReadOptions options = Even(new Random(seed));
            AdviceResult advice = AdviceStudy.Of(new AdviceRequest { Robot = "first", Opponents = ["second"], Read = options, Matches = s_isLong ? 192 : 32, Seed = 1, Threads = 2, Changes = Picked(options, new Random(seed)) });
            Assert.DoesNotContain(advice.Problems, p => p.Severity == Severity.Error);
            long many = s_isLong ? 256 : 32;
            double start = Brute(options, null, many);
            double[] gains = [.. advice.Changes.Select(c => Brute(options, c.Change, many) - start)];
            double error = 2.0 * Math.Sqrt(0.5 / many);
            bool isBest = gains[0] >= gains.Max() - error;
            agreed += isBest ? 1 : 0;
            held += advice.Changes.Zip(gains).Count(c => c.Second >= c.First.Gain.Low - error && c.Second <= c.First.Gain.High + error);
            all += gains.Length;
            output.WriteLine(FormattableString.Invariant($"garage {seed}: wins {start:0.00}; advised {advice.Changes[0].Change.Name} {advice.Changes[0].Gain.Value:+0.00;-0.00} (brute force {gains[0]:+0.00;-0.00}); best by brute force {advice.Changes[Array.IndexOf(gains, gains.Max())].Change.Name} {gains.Max():+0.00;-0.00}{(isBest ? "" : "  NOT")}"));
        }

        output.WriteLine(FormattableString.Invariant($"{agreed} of {s_range[1] - s_range[0] + 1} garages: the advised change is within the error of the best; {held} of {all} gains within their intervals and the error of brute force"));
        Assert.True(agreed >= 0.9 * (s_range[1] - s_range[0] + 1));
        Assert.True(held >= 0.9 * all);
    }

    [Fact]
    public void What_is_over_the_limit_is_left_out()
    {
        ReadOptions options = Garage(new Random(3));
        double mass = ScenarioReader.Check("first", options).Robot!.Chassis.Mass;
        AdviceResult advice = AdviceStudy.Of(new AdviceRequest { Robot = "first", Opponents = ["second"], Read = options, Matches = 8, Limit = mass + 0.03, Threads = 2, Changes = [new AdviceChange("mass", "ballast") { Grams = 31.0 }, new AdviceChange("mass", "less ballast") { Grams = 29.0 }] });
        Assert.Equal("less ballast", Assert.Single(advice.Changes).Change.Name);
        Assert.Contains("ballast", Assert.Single(advice.Notes), StringComparison.Ordinal);
    }

    // The same matches under another name: nothing changes, match by match.
    [Fact]
    public void A_change_that_changes_nothing_gains_nothing()
    {
        ReadOptions options = Garage(new Random(4));
        AdviceResult advice = AdviceStudy.Of(new AdviceRequest { Robot = "first", Opponents = ["second"], Read = options, Matches = 16, Threads = 2, Changes = [new AdviceChange("none", "nothing") { Made = r => r }] });
        Assert.Equal(0.0, advice.Changes[0].Gain.Value);
    }

    // ballast that does the same wherever it lies is one change; the same change twice brings less than its sum, and that is told
    [Fact]
    public void What_does_alike_is_one_row_and_pairs_tell_what_one_alone_brings()
    {
        ReadOptions options = Even(new Random(1));
        AdviceChange Grip(string kind, string place) => new(kind, ("twice the grip " + place).TrimEnd()) { Place = place, Made = r => r with { Wheels = [.. r.Wheels.Select(w => w with { Tyre = w.Tyre with { StaticFriction = 2.0 * w.Tyre.StaticFriction, KineticFriction = 2.0 * w.Tyre.KineticFriction } })] } };
        AdviceResult advice = AdviceStudy.Of(new AdviceRequest { Robot = "first", Opponents = ["second"], Read = options, Matches = 64, Threads = 2, Changes = [Grip("one", "here"), Grip("one", "there"), Grip("two", "")] });
        Assert.Equal(["twice the grip here or there", "twice the grip"], advice.Changes.Select(c => c.Change.Name).OrderByDescending(n => n.Length));
        Assert.True(advice.Changes.All(c => c.Gain.Low > 0.0));
        Assert.Equal(1, advice.PairsTried);
        AdvicePair pair = Assert.Single(advice.Pairs);
        Assert.True(pair.Beyond.High < 0.0);
        Assert.Equal(pair.Together.Value, advice.Changes[0].Gain.Value + pair.BeyondFirst.Value, 1e-9);
    }

    private static AdviceChange[] Picked(ReadOptions options, Random random)
    {
        ReadResultOf read = new(options);
        AdviceChange[] all = [.. AdviceCandidates.Of(options, read.Robot, read.Read, null, read.Robot.Chassis.Mass + 0.05, read.Scene, isSteel: false).Where(c => c.Kind != "motor" || c.Made is not null)];
        random.Shuffle(all);
        return all[..(s_isLong ? Offered : OfferedUsually)];
    }

    private static double Brute(ReadOptions options, AdviceChange? change, long matches)
    {
        DrawableScenario scenario = DrawableScenario.OfPair("first", "second", null, options with { Set = change?.Set ?? [], TyreMaterial = change?.Material }).Scenario!;
        var source = new FileMatchSource(scenario, new ContestKey(77, scenario.Label), change: change?.Made);
        var tally = Tally.Of(Campaign.Run(new BatchMatchRunner(source.Middle), source, (0, matches), [], 0.0, 2, _ => { }, CancellationToken.None));
        return tally.Share(tally.Wins);
    }

    // two robots of which neither surely wins, or there is nothing to advise
    private ReadOptions Even(Random random)
    {
        ReadOptions options = Garage(random);
        for (int i = 0; i < 8 && Brute(options, null, 32) is < 0.1 or > 0.9; i++)
        {
            options = Garage(random);
        }

        return options;
    }

    private ReadOptions Garage(Random random)
    {
        Directory.CreateDirectory(Path.Combine(_folder, "robots"));
        File.WriteAllText(Path.Combine(_folder, "garage.toml"), "[[tyre]]\nname = \"spare\"\nshelf = \"cast silicone 20A\"\nwidth = \"20 mm\"\ntread_thickness = \"5 mm\"\nwheel_mass = \"30 g\"\n");
        double mass = 0.4 + (1.6 * random.NextDouble());
        foreach (string name in new[] { "first", "second" })
        {
            double own = mass * (0.95 + (0.1 * random.NextDouble()));
            ShelfPart motor = StarterParts.MotorOf(null, own, 4, out _)!;
            ShelfPart tyre = PartShelf.Tyres.Parts[random.Next(PartShelf.Tyres.Parts.Count)];
            string text = new StarterRobot(new StarterDesign(own, 4, motor, tyre), isLocked: false).Text();
            File.WriteAllText(Path.Combine(_folder, "robots", name + ".toml"), text.Replace("name = \"starter\"", $"name = \"{name}\"", StringComparison.Ordinal));
        }

        return new ReadOptions { Garage = _folder };
    }

    private sealed class ReadResultOf(ReadOptions options)
    {
        public Scenes.ReadResult Read { get; } = ScenarioReader.Check("first", options);

        public RobotSettings Robot => Read.Robot!;

        public ScenarioSettings Scene { get; } = DrawableScenario.OfPair("first", "second", null, options).Scenario!.Middle;
    }
}
