using System.Text.Json;
using PushSim.Analysis.FitBySimulation;
using PushSim.Analysis.Statistics;
using PushSim.Cli.Shared;
using PushSim.Scenarios;
using PushSim.Tyres;
using PushSim.Words.Fits;
using PushSim.Words.Tables;
using Xunit;

namespace PushSim.Cli.Tests.Fit;

/// <summary>`fit --simulate`: the test itself is run in the engine.</summary>
public class SimulateCommandTests
{
    private static readonly string s_log = Path.Combine(Repository.Root, "scenarios", "logs", "mole-pulls.csv");
    private static readonly string s_test = Path.Combine(Repository.Root, "scenarios", "pull-test.toml");

    // the log was made by the engine with these numbers, 1 % scatter of friction from pull to pull and 0.02 N of noise
    [Fact]
    public void The_shipped_log_gives_back_the_tyre_it_was_made_with()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("fit", s_log, "--robot", s_test, "--simulate", "--json", "--report", "--out", scratch["out"]);
        Assert.Equal(ExitCode.Done, cli.Code);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement tyre = Assert.Single(json.RootElement.GetProperty("tyres").EnumerateArray());
        JsonElement simulated = tyre.GetProperty("simulated");
        foreach ((string name, double truth) in new[]
        {
            ("static_friction", 0.95), ("kinetic_friction", 0.74), ("slip_speed_m_per_s", 0.25), ("body_stiffness_n_per_m", 3200.0), ("body_damping_n_s_per_m", 3.0),
        })
        {
            JsonElement q = simulated.GetProperty("quantities").EnumerateArray().Single(e => e.GetProperty("name").GetString() == name);
            Assert.True(q.GetProperty("told").GetBoolean(), name);
            Assert.InRange(truth, q.GetProperty("low").GetDouble(), q.GetProperty("high").GetDouble());
        }

        // one value of each friction, told how it was found, the same in the document, the tables and the block
        Assert.Equal("simulated test", tyre.GetProperty("static_friction_by").GetString());
        JsonElement first = simulated.GetProperty("quantities")[0];
        Assert.Equal(first.GetProperty("value").GetDouble(), tyre.GetProperty("static_friction").GetDouble());
        Assert.Equal(first.GetProperty("high").GetDouble(), tyre.GetProperty("static_friction_high").GetDouble());
        Assert.Contains(json.RootElement.GetProperty("warnings").EnumerateArray(), w => w.GetString()!.Contains("the pull trace says 0.898 to 0.905, the simulated test 0.94", StringComparison.Ordinal));
        string page = File.ReadAllText(scratch["out/report.html"]);
        Assert.Contains("sliding friction and breakaway are those of the simulated test", page);
        Assert.DoesNotContain("<td>breakaway friction</td>", page);

        string block = File.ReadAllText(scratch["out/tyres.toml"]);
        Assert.Contains(FormattableString.Invariant($"static_friction = \"{tyre.GetProperty("static_friction").GetDouble():0.###} ±"), block);
        Assert.Contains("slip_speed = \"0.2", block);
        Assert.Contains("tyre,pull,time_s,measured_n,simulated_n", File.ReadAllText(scratch["out/simulated.csv"]));
        Assert.True(new FileInfo(scratch["out/simulated.png"]).Length > 10_000);
        Assert.Contains("what the simulated test tells", File.ReadAllText(scratch["out/report.html"]));

        // the table can be pasted
        string mole = File.ReadAllText(Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml")).Replace("tyre = \"soft\"", "tyre = \"mole-pulls\"");
        File.WriteAllText(scratch["robot.toml"], mole + "\n" + block);
        Assert.Equal(ExitCode.Done, Cli.Run("check", scratch["robot.toml"]).Code);
    }

    // its ramps are not those of the scenario
    [Fact]
    public void Numbers_are_shown_without_a_power_of_ten()
    {
        var fit = new SimulationFit
        {
            Parameters = [new FittedParameter(TestParameter.All[3], new Interval(123456.0, 0.00002, 654321.0), IsTold: true, UntoldCause.None)],
            Tyre = new TyreSettings { Name = "soft", StaticFriction = 1, KineticFriction = 1, BodyStiffness = 1, BodyDamping = 1, TreadMass = 1, VerticalStiffness = 1 },
            Pulls = [], Misfit = 0.02, Noise = 0.02, Followed = 1.0, Doubt = FitDoubt.None, Starts = 4, Agreeing = 4, Runs = 100,
        };
        IReadOnlyList<string> row = Assert.Single(SimulationFitTables.Table("soft", fit).Rows);
        Assert.Equal(["123456", "0.00002 to 654321"], row.Skip(1).Take(2));
    }

    [Fact]
    public void A_log_of_another_test_tells_nothing()
    {
        Cli cli = Cli.Run("fit", Path.Combine(Repository.Root, "scenarios", "logs", "soft-tyre.csv"), "--robot", s_test, "--simulate", "--json");
        Assert.Equal(ExitCode.Done, cli.Code);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement simulated = json.RootElement.GetProperty("tyres")[0].GetProperty("simulated");
        Assert.All(simulated.GetProperty("quantities").EnumerateArray(), q => Assert.False(q.GetProperty("told").GetBoolean()));
        Assert.Contains(simulated.GetProperty("warnings").EnumerateArray(), w => w.GetString()!.StartsWith("no run of the simulated test lasts through a pull of the log", StringComparison.Ordinal));
        Assert.Equal(JsonValueKind.Null, simulated.GetProperty("misfit_n").ValueKind);
        Assert.Contains(" The simulated test tells nothing (the simulated test does not follow the log).", json.RootElement.GetProperty("verdict").GetString(), StringComparison.Ordinal);
    }

    // no blank rows for what is not told, and the verdict says how the simulated fit ended
    [Fact]
    public void What_is_not_told_is_one_line_and_a_clause_of_the_verdict()
    {
        SimulationFit nothing = Made(0, FitDoubt.Disagreeing);
        AnswerTable table = SimulationFitTables.Table("soft", nothing);
        Assert.Empty(table.Columns);
        Assert.Empty(table.Rows);
        Assert.Contains("soft: the simulated test tells nothing: searches from different starts do not agree", table.Remarks.Select(r => r.Text));
        Assert.Equal(" The simulated test tells nothing (searches from different starts do not agree).", SimulationFitWords.Verdict([("soft", nothing)]));
        Assert.Equal(" The simulated test tells nothing (no quantity shows in this test by itself).", SimulationFitWords.Verdict([("soft", Made(0, FitDoubt.None))]));
        Assert.Equal($" The simulated test tells nothing ({SimulationFitWords.NotFollowed}).", SimulationFitWords.Verdict([("soft", null)]));
        Assert.Equal("", SimulationFitWords.Verdict([]));

        SimulationFit some = Made(2, FitDoubt.None);
        Assert.Empty(SimulationFitTables.Table("foam", some).Rows);
        Assert.Equal(3, SimulationFitTables.Table("foam", Made(3, FitDoubt.None)).Rows.Count);
        Assert.Equal(
            " The simulated test tells of soft nothing (searches from different starts do not agree), of foam 2 of 5 quantities (breakaway friction, sliding friction).",
            SimulationFitWords.Verdict([("soft", nothing), ("foam", some)]));
        Assert.Equal(" The simulated test tells all 5 quantities.", SimulationFitWords.Verdict([("foam", Made(5, FitDoubt.None))]));
    }

    private static SimulationFit Made(int told, FitDoubt doubt) => new()
    {
        Parameters = [.. TestParameter.All.Select((p, k) => new FittedParameter(p, new Interval(1.0, 0.9, 1.1), k < told, k < told ? UntoldCause.None : UntoldCause.Faint))],
        Tyre = ScenarioReader.Check(s_test).Robot!.Wheels[0].Tyre, Pulls = [], Misfit = 0.1, Noise = 0.1, Followed = 1.0, Doubt = doubt, Starts = 4, Agreeing = 2, Runs = 100,
    };

    [Theory]
    [InlineData(null, "logs/mole-pulls.csv", "add --robot with a scenario")]
    [InlineData("robots/mole.toml", "logs/mole-pulls.csv", "add --robot with a scenario")]
    [InlineData("spot-turn.toml", "logs/mole-pulls.csv", "needs a scenario with a tether")]
    [InlineData("drag-test.toml", "logs/mole-pulls.csv", "add --drag")]
    [InlineData("pull-test.toml", "logs/readings.csv", "needs logs over time")]
    public void What_it_lacks_is_said(string? robot, string log, string message)
    {
        string At(string file) => Path.Combine(Repository.Root, "scenarios", file);
        string[] with = robot is null ? ["--load", "2 N"] : ["--robot", At(robot)];
        Cli cli = Cli.Run(["fit", At(log), .. with, "--simulate"]);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains(message, cli.Error);
    }
}
