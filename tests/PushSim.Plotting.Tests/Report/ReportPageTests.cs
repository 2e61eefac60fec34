using System.Diagnostics;
using System.Net;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Text;
using PushSim.Analysis.Chance;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Plots;
using PushSim.Plotting.Report;
using PushSim.Plotting.Style;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests;
using PushSim.Words.Runs;
using PushSim.Words.Tables;
using Xunit;

namespace PushSim.Plotting.Tests.Report;

public class ReportPageTests
{
    // Invented here: text that ends elements, breaks attributes, rings a bell, turns the line and is not even whole
    private const string Evil = "</script><script>alert(1)</script>\" onload='x' <!-- --> &amp; \0\u0007\u001b[31m\u202Eabc\ud800";

    private static ReportPage Page(RunResult result) => new()
    {
        Command = "run", Subject = result.Scenario.Name, Card = RunCard.Of(result, new AskedFiles("shove.toml")), Verdict = RunWords.Verdict(result), Replay = result, Figures = RunPlot.Of(result).Figures, Cautions = "Take care.",
    };

    private static string Text(ReportPage page)
    {
        using var stream = new MemoryStream();
        page.Write(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static ScenarioSettings Shove(string first = "first", string second = "second") =>
        TestRobots.Shove(TestRobots.FourWheels() with { Name = first }, TestRobots.FourWheels() with { Name = second });

    [Fact]
    public void The_command_for_odds_names_both_robots()
    {
        RunResult result = Simulator.Run(Shove());
        Assert.Equal("pushsim odds mole \"big wombat\" --garage g", RunCard.Of(result, new AskedFiles("mole") { Opponent = "big wombat", Garage = "g" }).Suggestions[0].Line);
        Assert.Equal("pushsim odds shove.toml", RunCard.Of(result, new AskedFiles("shove.toml")).Suggestions[0].Line);
    }

    // Bounds of the product; the best of three, for another program may take the machine meanwhile
    [Fact]
    public void A_shove_of_three_seconds_is_small_and_made_at_once()
    {
        RunResult result = Simulator.Run(Shove());
        Assert.Equal(3.0, result.Time[^1], 1e-9);
        double best = double.PositiveInfinity;
        long size = 0;
        for (int i = 0; i < 3; i++)
        {
            using var stream = new MemoryStream();
            long start = Stopwatch.GetTimestamp();
            Page(result).Write(stream);
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalSeconds);
            size = stream.Length;
        }

        Assert.InRange(size, 50_000, 1_500_000);
        Assert.True(best < 0.5, $"{best:0.000} s");
    }

    [Fact]
    public void Style_and_script_are_allowed_by_their_hashes_and_nothing_else_is()
    {
        string page = Text(Page(Simulator.Run(TestRobots.Launch())));
        string policy = Regex.Match(page, "Content-Security-Policy\" content=\"([^\"]+)\"").Groups[1].Value;
        Assert.StartsWith("default-src 'none'; ", policy);
        Assert.DoesNotContain("unsafe", policy);
        Assert.Contains($"style-src 'sha256-{Hash(Regex.Match(page, "<style>(.*?)</style>", RegexOptions.Singleline).Groups[1].Value)}'", policy);
        Assert.Contains($"script-src 'sha256-{Hash(Regex.Match(page, "<script>(.*?)</script>", RegexOptions.Singleline).Groups[1].Value)}'", policy);
        Assert.DoesNotContain(" style=", page);
        Assert.DoesNotMatch(@"\s(src|srcset|data|action)=", page);
        Assert.DoesNotContain("@import", page);
        // the one address is the name of SVG's elements, not a place
        Assert.Equal(["http://www.w3.org/2000/svg"], Regex.Matches(page, @"(?i)https?://[^""' ]+").Select(m => m.Value).Distinct());
        Assert.All(Regex.Matches(page, "href=\"([^\"]+)\""), m => Assert.StartsWith("#", m.Groups[1].Value));
        Assert.All(Regex.Matches(page, @"url\(([^)]+)\)"), m => Assert.StartsWith("#", m.Groups[1].Value));
    }

    // of many runs one is shown: which stands above it, not at the foot of the page
    [Fact]
    public void Which_run_the_replay_shows_stands_between_its_heading_and_the_replay()
    {
        string page = Text(Page(Simulator.Run(TestRobots.Launch())) with { ReplayNote = "Match 7 <middle>: it wins." });
        int[] order = [.. new[] { "id=\"h-replay\"", "<p>Match 7 &lt;middle&gt;: it wins.</p>", "id=\"player\"" }.Select(t => page.IndexOf(t, StringComparison.Ordinal))];
        Assert.All(order, i => Assert.True(i > 0));
        Assert.Equal(order.Order(), order);
    }

    [Fact]
    public void A_page_without_replay_allows_no_script()
    {
        string page = Text(Page(Simulator.Run(TestRobots.Launch())) with { Replay = null });
        Assert.Contains("script-src 'none'", page);
        Assert.DoesNotContain("<script", page);
        Assert.Contains("class=\"plot desk\"", page);
    }

    [Fact]
    public void A_tolerance_by_a_factor_is_no_half_width()
    {
        var page = new ReportPage
        {
            Command = "run", Subject = "factor", Card = new AnswerCard("factor"), Verdict = "", Cautions = "Take care.",
            Inputs =
            [
                new ReportInput("floor.abrasiveness", "0.005 ×/ 5", 0.005, "", 0.02, "own.toml", 7) { Spread = DrawShape.Factor },
                new ReportInput("floor.friction", "0.9 ± 0.1", 0.9, "", 0.1, "own.toml", 8),
            ],
        };
        string text = WebUtility.HtmlDecode(Text(page));
        Assert.Equal(2, Regex.Count(text, "0\\.005 ×/ 5"));
        Assert.DoesNotContain("± 0.02", text);
        Assert.Equal(2, Regex.Count(text, "0\\.9 ± 0\\.1"));
    }

    [Fact]
    public void Hostile_names_end_up_as_words()
    {
        string page = Text(Page(Simulator.Run(Shove(Evil, Evil + "2"))) with
        {
            Subject = Evil,
            Question = Evil,
            Verdict = Evil,
            Warnings = [Evil],
            Estimates = [Evil],
            Tables = [new AnswerTable(Evil).AddColumn(Evil).AddNumberColumn(Evil).AddRow(Evil, Evil)],
            Inputs = [new ReportInput(Evil, Evil, 1.0, Evil, 0.1, Evil, 1)],
            Cautions = Evil,
        });
        Assert.Equal(2, Regex.Matches(page, "<script").Count);
        Assert.Equal(2, Regex.Matches(page, "</script").Count);
        Assert.DoesNotContain("<!--", page);
        Assert.DoesNotMatch("<[^>]*\\sonload", Regex.Replace(page, "\"[^\"]*\"", ""));
        Assert.DoesNotContain(page, c => char.IsControl(c) && c != '\n');
        Assert.DoesNotContain('\u202E', page);
        Assert.DoesNotContain(page, char.IsSurrogate);
        Assert.Contains("&lt;/script&gt;&lt;script&gt;", page);
        using JsonDocument data = JsonDocument.Parse(Regex.Match(page, "id=\"replay-data\">(.*?)</script>", RegexOptions.Singleline).Groups[1].Value);
        Assert.StartsWith("</script><script>", data.RootElement.GetProperty("robots")[0].GetProperty("name").GetString());
    }

    [Fact]
    public void A_name_of_ten_thousand_letters_is_cut()
    {
        string longName = new('m', 10_000);
        RunResult result = Simulator.Run(Shove(longName, longName + "2"));
        string page = Text(Page(result) with { Subject = longName });
        Assert.InRange(page.Length, 50_000, 1_500_000);
        Assert.Contains(new string('m', PlainLabel.Longest) + "…", page);
        Assert.DoesNotContain(new string('m', 2001), page);
        using var svg = new MemoryStream();
        RunPlot.Of(result).WriteSvg(svg);
        Assert.DoesNotContain(new string('m', 200), Encoding.UTF8.GetString(svg.ToArray()));
    }

    // The picture files meet the same names
    [Fact]
    public void Pictures_take_a_hostile_name()
    {
        PlotSheet plot = RunPlot.Of(Simulator.Run(Shove(Evil, Evil + "2")));
        using var svg = new MemoryStream();
        plot.WriteSvg(svg);
        svg.Position = 0;
        Assert.DoesNotContain(System.Xml.Linq.XDocument.Load(svg).Descendants(), e => e.Name.LocalName == "script");
        using var other = new MemoryStream();
        plot.WritePng(other);
        plot.WritePdf(other);
        Assert.NotEqual(0, other.Length);
    }

    [Fact]
    public void The_same_run_gives_the_same_page()
    {
        Assert.Equal(Text(Page(Simulator.Run(TestRobots.Spot()))), Text(Page(Simulator.Run(TestRobots.Spot()))));
    }

    // Frames are samples, the first and the last among them
    [Theory]
    [InlineData(2)]
    [InlineData(601)]
    [InlineData(602)]
    [InlineData(3001)]
    [InlineData(20_001)]
    public void Frames_are_few_rising_and_whole(int samples)
    {
        int[] frames = ReplayFrames.Of(samples).Samples;
        Assert.InRange(frames.Length, 2, 602);
        Assert.Equal((0, samples - 1), (frames[0], frames[^1]));
        Assert.All(frames.Zip(frames.Skip(1)), p => Assert.True(p.Second > p.First));
    }

    [Fact]
    public void Words_for_a_screen_reader_hold_the_values_of_the_curve()
    {
        RunResult result = Simulator.Run(TestRobots.Launch());
        string page = Text(Page(result));
        string end = FormattableString.Invariant($"at the end {result.Trace.Body.Speed[^1]:0.##}.");
        Assert.Matches($"aria-label=\"Plot: Speed of robot[^\"]*robot: from [^\"]*{Regex.Escape(end)}", page);
    }

    private static string Hash(string text) => Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
