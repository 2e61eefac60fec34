using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Garage;

/// <summary>`garage`, its names in other commands, and `fit` of its notebook.</summary>
public class GarageCommandTests
{
    private static string Shipped => Path.Combine(Repository.Root, "scenarios", "garage");

    [Fact]
    public void A_new_garage_is_whole_and_never_written_over()
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Done, Cli.Run("garage", "new", scratch["g"]).Code);
        Cli list = Cli.Run("garage", "--garage", scratch["g"]);
        Assert.Equal(ExitCode.Done, list.Code);
        Assert.Contains("all can be used", list.Output);
        Assert.InRange(list.Output.Trim().Split('\n').Length, 5, 24);

        // a command to paste stands on one line, however long
        Assert.All(list.Output.Split('\n').Where(l => !l.Contains(": pushsim ", StringComparison.Ordinal)), l => Assert.InRange(l.TrimEnd().Length, 0, 79));
        Assert.Equal("", list.Error);
        Cli again = Cli.Run("garage", "new", scratch["g"]);
        Assert.Equal(ExitCode.CannotReadOrWrite, again.Code);
        Assert.Contains("already has", again.Error);
    }

    // The shipped example is the starter with a notebook.
    [Theory]
    [InlineData("garage.toml", "garage.toml")]
    [InlineData("robots.mole.toml", "robots/mole.toml")]
    [InlineData("robots.badger.toml", "robots/badger.toml")]
    public void The_starter_is_the_shipped_example(string template, string file)
    {
        string[] starter = File.ReadAllLines(Path.Combine(Repository.Root, "src", "PushSim.Cli", "Garage", "Templates", template));
        Assert.StartsWith("#:schema", starter[0]);
        Assert.Equal(starter[1..], File.ReadAllLines(Path.Combine(Shipped, file)));
    }

    [Fact]
    public void What_cannot_be_used_is_told_first_of_what_to_do()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("garage", "new", scratch["g"]);
        File.WriteAllText(scratch["g/robots/broken.toml"], "[chassis]\nmass = \"1 kg\"\n");
        Cli list = Cli.Run("garage", "--garage", scratch["g"]);
        Assert.Contains("1 cannot be used as it is", list.Output);
        Assert.Contains("Next: mend robot broken", list.Output);
    }

    [Fact]
    public void A_list_is_a_document_too()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("garage", "--json", "--garage", Shipped).Output);
        JsonElement root = json.RootElement;
        Assert.Equal("garage", root.GetProperty("command").GetString());
        Assert.Equal(["badger", "mole"], root.GetProperty("robots").EnumerateArray().Select(r => r.GetProperty("name").GetString()));
        Assert.Equal(96, root.GetProperty("readings").GetProperty("counted").GetInt32());
    }

    [Theory]
    [InlineData("check", "mole", "wombat")]
    [InlineData("odds", "mole", "badger", "--matches", "8", "--no-plots", "--json")]
    [InlineData("run", "mole", "--against", "badger", "--json")]
    [InlineData("limits", "mole", "--json")]
    [InlineData("ladder", "mole", "badger", "--matches", "4", "--json")]
    public void Commands_take_names(params string[] words) => Assert.Equal(ExitCode.Done, Cli.Run([.. words, "--garage", Shipped]).Code);

    [Fact]
    public void A_name_that_nobody_has_is_told_with_the_nearest()
    {
        Cli cli = Cli.Run("odds", "mol", "badger", "--garage", Shipped);
        Assert.Equal(ExitCode.CannotReadOrWrite, cli.Code);
        Assert.Contains("did you mean \"mole\"?", cli.Error);
    }

    [Fact]
    public void An_opponent_is_named_once()
    {
        Cli cli = Cli.Run("odds", "mole", "badger", "--against", "badger", "--garage", Shipped);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("named twice", cli.Error);
    }

    [Fact]
    public void Fit_takes_the_notebook_of_the_garage()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", "--json", "--garage", Shipped).Output);
        JsonElement fresh = json.RootElement.GetProperty("tyres").EnumerateArray().Single(t => t.GetProperty("name").GetString() == "silicone" && t.GetProperty("state").GetString() == "wiped");

        // the invented truth of the notebook: 0.97 fresh, 60 % of it left, over 4 pulls
        Assert.InRange(0.97, fresh.GetProperty("kinetic_friction_low").GetDouble(), fresh.GetProperty("kinetic_friction_high").GetDouble());
        Assert.InRange(0.60, fresh.GetProperty("fouled_ratio_low").GetDouble(), fresh.GetProperty("fouled_ratio_high").GetDouble());
        Assert.InRange(4.0, fresh.GetProperty("fouling_pulls_low").GetDouble(), fresh.GetProperty("fouling_pulls_high").GetDouble());
        Assert.Equal(ExitCode.WrongCommandLine, Cli.Run("fit").Code);
    }

    // sentence, card, table, JSON and CSV stand in one order, told in words; every gain has its interval
    [Theory]
    [InlineData("gram", "most points a gram")]
    [InlineData("points", "most points on top")]
    public void Advice_has_one_order_and_a_page(string per, string told)
    {
        using var scratch = new ScratchFolder();
        string[] words = ["advise", "badger", "--against", "mole", "--matches", "32", "--garage", Shipped, "--per", per];
        if (per == "gram")
        {
            Cli card = Cli.Run([.. words, "--no-plots", "--out", scratch["card"]]);
            Assert.True(card.Code == ExitCode.Done, card.Error);
            Assert.InRange(card.Output.Trim().Split('\n').Length, 5, 24);
            Assert.Contains(told, card.Output.ReplaceLineEndings(" ").Replace("   ", " ", StringComparison.Ordinal));
        }

        Cli cli = Cli.Run([.. words, "--out", scratch["out"], "--report", "--json"]);
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        (string Name, double Low, double Points, double? Grams)[] changes = [.. json.RootElement.GetProperty("changes").EnumerateArray().Select(c => (c.GetProperty("change").GetString()!, c.GetProperty("win_points_low").GetDouble(), c.GetProperty("win_points").GetDouble(), c.GetProperty("grams") is { ValueKind: JsonValueKind.Number } g ? g.GetDouble() : (double?)null))];
        double[] sure = [.. changes.TakeWhile(c => c.Low > 0.0).Where(c => per == "points" || c.Grams is not null).Select(c => per == "points" ? c.Points : c.Points / Math.Max(1.0, c.Grams!.Value))];
        Assert.True(sure.Length > 0);
        Assert.Equal(sure.OrderDescending(), sure);
        Assert.DoesNotContain(changes.SkipWhile(c => c.Low > 0.0), c => c.Low > 0.0);
        Assert.Contains($"change first: {changes[0].Name}", json.RootElement.GetProperty("verdict").GetString());
        Assert.Equal(changes.Select(c => c.Name), File.ReadLines(scratch["out/changes.csv"]).Skip(1).Select(l => l.StartsWith('"') ? l[1..l.IndexOf('"', 1)] : l[..l.IndexOf(',')]));
        string page = File.ReadAllText(scratch["out/report.html"]);
        Assert.Contains("What should I change first about badger", page);
        Assert.Contains(told, page);
        Assert.True(File.Exists(scratch["out/plot.png"]));
    }

    [Fact]
    public void Advice_tells_the_counting_error_of_the_share() => Assert.Matches(@"^mole wins \d+ of 100 \(\d+ to \d+, 32 matches\) against wombat", Cli.Run("advise", "mole", "--against", "wombat", "--matches", "32", "--garage", Shipped, "--quiet").Output);

    [Fact]
    public void Advice_has_the_keys_of_scripts()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("advise", "mole", "--against", "badger", "--matches", "32", "--json", "--garage", Shipped, "--limit", "1400g").Output);
        JsonElement change = json.RootElement.GetProperty("changes")[0];
        Assert.All(["change", "win_points", "win_points_low", "win_points_high", "grams", "price"], k => Assert.True(change.TryGetProperty(k, out _), k));
        Assert.True(json.RootElement.TryGetProperty("measurements", out _));
        Assert.DoesNotContain(json.RootElement.GetProperty("changes").EnumerateArray(), c => c.GetProperty("grams") is { ValueKind: JsonValueKind.Number } g && g.GetDouble() > 40.5);
    }
}
