using System.Globalization;
using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Plan;

public class PlanCommandTests
{
    private static readonly string s_readings = Path.Combine(Repository.Root, "scenarios", "logs", "readings.csv");

    // computed here: ten pairs ask for 14 pulls each at 1.5 deviations and 80 %
    [Fact]
    public void The_number_of_pulls_is_that_of_the_power()
    {
        using JsonDocument json = Plan("a", "b", "c", "d", "e", "--difference", "4.5%", "--spread", "3%");
        Assert.Equal(14, json.RootElement.GetProperty("pulls_each").GetInt32());
        JsonElement[] order = [.. json.RootElement.GetProperty("order").EnumerateArray()];
        Assert.Equal(70, order.Length);
        string[][] blocks = [.. order.GroupBy(p => p.GetProperty("block").GetInt32()).Select(b => b.Select(p => p.GetProperty("tyre").GetString()!).ToArray())];
        Assert.Equal(14, blocks.Length);
        Assert.All(blocks, b => Assert.Equal(["a", "b", "c", "d", "e"], b.Order()));
        Assert.True(blocks.Select(b => string.Concat(b)).Distinct().Count() > 7);
        Assert.All(order.Zip(order.Skip(1)), p => Assert.NotEqual(p.First.GetProperty("tyre").GetString(), p.Second.GetProperty("tyre").GetString()));
    }

    [Fact]
    public void One_seed_gives_one_order()
    {
        Assert.Equal(Order(5), Order(5));
        Assert.NotEqual(Order(5), Order(6));

        static string Order(int seed) => Cli.Steady(Cli.Run("plan", "a", "b", "c", "--json", "--seed", $"{seed}").Output);
    }

    // what is printed to be typed next names the file where it lies
    [Fact]
    public void The_next_command_finds_the_table()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("plan", "a", "b", "--load", "200 gf", "--out", scratch["out"]);
        string next = Assert.Single(cli.Output.Split('\n'), l => l.StartsWith("then: pushsim fit ", StringComparison.Ordinal));
        Assert.True(File.Exists(next["then: pushsim fit ".Length..].Trim().Trim('"')), next);
    }

    [Fact]
    public void A_seed_that_is_no_number_is_told_in_plain_words() =>
        Assert.Contains("--seed takes a whole number", Cli.Run("plan", "a", "b", "--seed", "x").Error);

    // filled in by a person: fit reads the table as it is, finds the tyres, their friction and their order
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Fit_reads_the_filled_table(bool hasLoad)
    {
        using var scratch = new ScratchFolder();
        string[] load = ["--load", "200 gf"];
        Cli plan = Cli.Run(["plan", "soft", "foam 30", "printed", "--spread", "2%", "--out", scratch["out"], .. hasLoad ? load : []]);
        Assert.Equal(ExitCode.Done, plan.Code);
        string[] lines = File.ReadAllLines(scratch["out/plan.csv"]);
        Dictionary<string, double> friction = new() { ["soft"] = 0.6, ["foam 30"] = 0.5, ["printed"] = 0.3 };
        var random = new Random(4);
        for (int i = 0; i < lines.Length; i++)
        {
            string[] cells = lines[i].Split(',');
            if (!char.IsAsciiDigit(lines[i][0]))
            {
                continue;
            }

            int force = hasLoad ? 4 : 3;
            double value = 200.0 * friction[cells[2]] * (1.0 + (0.04 * (random.NextDouble() - 0.5)));
            cells[force] = value.ToString("0.0", CultureInfo.InvariantCulture);
            cells[force + 1] = (1.1 * value).ToString("0.0", CultureInfo.InvariantCulture);
            cells[force + 2] = "12.4";
            cells[^1] = i % 5 == 0 ? "slipped twice" : "";
            lines[i] = string.Join(',', cells);
        }

        File.WriteAllLines(scratch["filled.csv"], lines);
        Cli fit = Cli.Run(["fit", scratch["filled.csv"], "--json", .. hasLoad ? [] : load]);
        Assert.Equal("", fit.Error);
        using JsonDocument json = JsonDocument.Parse(fit.Output);
        JsonElement[] tyres = [.. json.RootElement.GetProperty("tyres").EnumerateArray()];
        Assert.Equal(friction.Keys.Order(), tyres.Select(t => t.GetProperty("name").GetString()).Order());
        Assert.All(tyres, t => Assert.Equal(friction[t.GetProperty("name").GetString()!], t.GetProperty("kinetic_friction").GetDouble(), 0.01));
        using JsonDocument planned = Plan(["soft", "foam 30", "printed", "--spread", "2%", .. load]);
        int each = planned.RootElement.GetProperty("pulls_each").GetInt32();
        Assert.All(tyres, t => Assert.Equal(each, t.GetProperty("pulls").GetInt32()));
        Assert.All(tyres, t => Assert.Equal(200.0 * 9.80665e-3, t.GetProperty("load_n").GetDouble(), 1e-9));

        // and back again: the filled table tells the next plan its scatter
        JsonElement comparison = json.RootElement.GetProperty("comparison");
        using JsonDocument next = Plan(["soft", "foam 30", "--from", scratch["filled.csv"]]);
        Assert.Equal("measured", next.RootElement.GetProperty("spread_source").GetString());
        Assert.Equal(comparison.GetProperty("spread_ratio").GetDouble(), next.RootElement.GetProperty("spread_ratio").GetDouble(), 1e-9);
        Assert.All(comparison.GetProperty("pairs").EnumerateArray(), p => Assert.True(p.GetProperty("told_apart").GetBoolean()));
        Assert.False(comparison.GetProperty("pulled_tyre_after_tyre").GetBoolean());
        Assert.Contains(comparison.GetProperty("trends").EnumerateArray(), t => t.GetProperty("tyre").ValueKind == JsonValueKind.Null);
    }

    [Fact]
    public void The_scatter_comes_from_earlier_readings()
    {
        using JsonDocument fit = JsonDocument.Parse(Cli.Run("fit", s_readings, "--load", "13.3 N", "--json").Output);
        using JsonDocument plan = Plan("a", "b", "--from", s_readings);
        Assert.Equal("measured", plan.RootElement.GetProperty("spread_source").GetString());
        Assert.Equal(fit.RootElement.GetProperty("comparison").GetProperty("spread_ratio").GetDouble(), plan.RootElement.GetProperty("spread_ratio").GetDouble(), 1e-12);
    }

    [Fact]
    public void Too_many_pulls_are_refused_in_words()
    {
        using JsonDocument plan = Plan("a", "b", "--difference", "1%", "--spread", "5%");
        Assert.Equal(60, plan.RootElement.GetProperty("pulls_each").GetInt32());
        Assert.Contains("not the 1 % wanted", plan.RootElement.GetProperty("verdict").GetString());
    }

    [Theory]
    [InlineData("a")]
    [InlineData("a", "a")]
    [InlineData("a", "b,c")]
    [InlineData("a", "=1+2")]
    [InlineData("a", "b", "--difference", "0")]
    [InlineData("a", "b", "--difference", "nan")]
    [InlineData("a", "b", "--spread", "-3%")]
    [InlineData("a", "b", "--load", "0 gf")]
    [InlineData("a", "b", "--out", "")]
    public void A_wrong_call_is_answered(params string[] args)
    {
        Cli cli = Cli.Run(["plan", .. args, "--json"]);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("pushsim plan --help", cli.Error);
        Assert.Equal("", cli.Output);
    }

    [Fact]
    public void An_empty_table_is_no_fit()
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Done, Cli.Run("plan", "a", "b", "--load", "2 N", "--out", scratch["out"], "--quiet").Code);
        Cli fit = Cli.Run("fit", scratch["out/plan.csv"], "--json");
        Assert.Equal(ExitCode.WrongInput, fit.Code);
        Assert.NotEqual("", fit.Error);
    }

    [Fact]
    public void The_comparison_of_the_shipped_readings()
    {
        Cli text = Cli.Run("fit", s_readings, "--load", "13.3 N", "--quiet");
        Assert.Contains("most grip: soft", text.Output);
        Assert.Contains("told apart from all others", text.Output);
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", s_readings, "--load", "13.3 N", "--json", "--difference", "0.02").Output);
        JsonElement comparison = json.RootElement.GetProperty("comparison");
        Assert.Equal(3, comparison.GetProperty("pairs").GetArrayLength());
        Assert.True(comparison.GetProperty("pulled_tyre_after_tyre").GetBoolean());
        Assert.Equal(0.02, comparison.GetProperty("difference_that_matters").GetDouble());
        Assert.Equal(ExitCode.WrongCommandLine, Cli.Run("fit", s_readings, "--load", "13.3 N", "--difference", "0").Code);
    }

    private static JsonDocument Plan(params string[] args)
    {
        Cli cli = Cli.Run(["plan", .. args, "--json"]);
        Assert.Equal("", cli.Error);
        Assert.Equal(ExitCode.Done, cli.Code);
        return JsonDocument.Parse(cli.Output);
    }
}
