using System.Net;
using System.Text.RegularExpressions;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Report;

/// <summary>Pages of commands other than `run`, and what a page of a turn adds.</summary>
public sealed class ReportCommandTests(ReportFixture fixture)
{
    private static readonly string s_pull = Repository.Scenario("pull-test");

    private static readonly string s_log = Path.Combine(Repository.Root, "scenarios", "logs", "soft-tyre.csv");

    private static readonly string s_readings = Path.Combine(Repository.Root, "scenarios", "logs", "readings.csv");

    private static string Robot(string name) => Path.Combine(Repository.Root, "scenarios", "robots", name + ".toml");

    internal static string[] Command(string name) => name switch
    {
        "limits" => ["limits", s_pull],
        "limits of a robot alone" => ["limits", Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml"), "--throttle", "0.8"],
        "fit" => ["fit", s_log, "--robot", s_pull],
        "odds" => ["odds", Repository.Scenario("shove-heavy-grippy"), "--matches", "24"],
        "sweep" => ["sweep", s_pull, "--vary", "drive.*.gear_ratio=15..35", "--points", "5"],
        "sweep of two" => ["sweep", s_pull, "--vary", "drive.*.gear_ratio=15..35", "--vary", "chassis.mass=1 kg..2 kg", "--points", "3"],
        "ladder" => ["ladder", Robot("mole"), Robot("badger"), Robot("gopher"), "--matches", "8"],
        _ => ["fit", s_log, s_readings, "--load", "1360 gf"],
    };

    [Theory]
    [InlineData("limits")]
    [InlineData("limits of a robot alone")]
    [InlineData("fit")]
    [InlineData("fit of several tyres")]
    [InlineData("odds")]
    [InlineData("sweep")]
    [InlineData("sweep of two")]
    [InlineData("ladder")]
    public void With_json_it_needs_a_folder(string name)
    {
        Cli refused = Cli.Run([.. Command(name), "--json", "--report"]);
        Assert.Equal(ExitCode.WrongCommandLine, refused.Code);
        Assert.Contains("--out", refused.Error);
        Assert.True(File.Exists(fixture.Page(name)));
    }

    // The page says what the screen says: verdict, cautions, every cell of every table; and no folder of this machine; the next run without it takes it away
    [Theory]
    [InlineData("limits")]
    [InlineData("limits of a robot alone")]
    [InlineData("fit")]
    [InlineData("fit of several tyres")]
    [InlineData("odds")]
    [InlineData("sweep")]
    [InlineData("sweep of two")]
    [InlineData("ladder")]
    public void It_says_what_the_screen_says(string name)
    {
        string[] command = Command(name);
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run([.. command, "--details", "--report", "--no-plots", "--out", scratch["a"]]);
        Assert.EndsWith("report.html", cli.Output.TrimEnd());
        string page = File.ReadAllText(scratch["a/report.html"]);
        string[] cells = [.. Regex.Matches(page.Split("id=\"numbers\"")[1].Split("</section>")[0], "<t[dh][^>]*>([^<]*)</t[dh]>").Select(m => WebUtility.HtmlDecode(m.Groups[1].Value))];
        Assert.True(cells.Length > 10);
        string screen = Words(cli.Output);
        string said = Cli.Run([.. command, "--quiet", "--no-plots", "--out", scratch["a"]]).Output;
        Assert.Contains(Words(said), Words(WebUtility.HtmlDecode(page)));
        Assert.False(File.Exists(scratch["a/report.html"]));
        foreach (string number in cells.Where(c => Regex.IsMatch(c, @"^[-+]?\d+\.\d+$")))
        {
            Assert.Contains(number, screen);
        }

        Assert.Contains("id=\"cautions\"", page);
        Assert.Contains("class=\"plot desk\"", page);
        Assert.DoesNotContain(Repository.Root, page);
        Assert.DoesNotContain(Scenarios.Drawing.DrawableScenario.BuiltIn, page);
        Assert.Equal(name == "odds", page.Contains("id=\"replay\"", StringComparison.Ordinal));
        Assert.Equal(name == "odds", Regex.IsMatch(page, @"Match \d+, the middle one of all by the ground that .* gained: "));
    }

    [Fact]
    public void A_fit_can_be_copied_from_its_page()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("fit", s_log, "--load", "1360 gf", "--report", "--no-plots", "--out", scratch["a"]);
        string page = File.ReadAllText(scratch["a/report.html"]);
        string listing = WebUtility.HtmlDecode(Regex.Match(page, "<pre[^>]*>([^<]*)</pre>").Groups[1].Value);
        Assert.Equal(File.ReadAllText(scratch["a/tyres.toml"]).Trim(), listing.Trim());
        Assert.Contains("<th scope=\"row\">--load</th>", page);
    }

    [Fact]
    public void A_turn_has_its_wheels_helps_modes_and_wear_on_the_page()
    {
        using var scratch = new ScratchFolder();
        string screen = Words(Cli.Run("run", Repository.Scenario("tyre-wear"), "--details", "--report", "--no-plots", "--out", scratch["a"]).Output);
        string page = File.ReadAllText(scratch["a/report.html"]);
        foreach (string caption in new[] { "Each wheel", "What a change would do", "Swing of the turn", "Wear of" })
        {
            Assert.Contains($"<caption>{caption}</caption>", page);
            Assert.Contains(caption, screen);
        }

        string[] remarks = [.. Regex.Matches(page, "<p(?: class=\"aside\")?>([^<]*)</p>").Select(m => Words(WebUtility.HtmlDecode(m.Groups[1].Value)))];
        Assert.Contains(remarks, r => r.StartsWith("least current limit", StringComparison.Ordinal) && screen.Contains(r, StringComparison.Ordinal));
        Assert.Contains(remarks, r => r.StartsWith("wear: ", StringComparison.Ordinal) && screen.Contains(r, StringComparison.Ordinal));
        Assert.Contains("Tread worn per turn of the robot", page);
    }

    [Fact]
    public void A_hostile_tyre_name_is_only_text()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("fit", s_log, "--load", "1360 gf", "--tyre", "<script>alert(1)</script>", "--report", "--no-plots", "--out", scratch["a"]);
        string page = File.ReadAllText(scratch["a/report.html"]);
        Assert.DoesNotContain("<script>alert", page);
        Assert.Contains("&lt;script&gt;alert(1)", page);
    }

    private static string Words(string text) => Regex.Replace(text, @"\s+", " ").Trim();
}
