using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CsvHelper;
using PushSim.Cli.Shared;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>Names made to do harm, on their way to terminal, page and CSV. PUSHSIM_ESCAPES=100000 makes that many.</summary>
public partial class EscapingTests
{
    private static readonly int s_count = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_ESCAPES"), out int n) ? n : 5000;

    private static readonly string[] s_pieces =
    [
        "<script>alert(1)</script>", "</script><script>window.hit=1</script>", "<img src=x onerror=hit()>", "\" onload=\"hit()", "' onclick='hit()", "<svg/onload=hit()>", "<!--", "-->", "]]>", "&lt;", "&#x3c;", "</title>", "</style>", "</svg>", "javascript:hit()",
        "=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "=HYPERLINK(\"x\")", "\t=1", "\r=1", "\n=1", " =1", "\u00A0=1", "\uFEFF=1", "\u200B=1", "\uFF1D1", "\uFF201", "\"", "\"\"", "',", ",", ";", "\n", "\r\n", "|",
        "\u001b[31m", "\u001b]0;title\u0007", "\u001b]8;;x\u001b\\", "\u009b2J", "\u0090q\u009c", "\u0007", "\u0000", "\u007f", "\u0085", "\b\b\b", "\u202E", "\u2066", "\u200F", "\u2028", "\u2029", "\ud800", "\udc00", "😀", "é", "[bold]", "[/]", "[[", "[link=x]", "%s%n", "{0}", "mole", " ", "0",
    ];

    [Fact]
    public void Terminal_text_holds_no_control_and_no_turn_of_direction()
    {
        foreach (string hostile in Hostile(1))
        {
            string plain = PlainText.Of(hostile);
            Assert.Equal(hostile.Length, plain.Length);
            Calm(plain);
        }
    }

    [Fact]
    public void A_cell_is_no_formula_and_comes_back_as_one_cell()
    {
        foreach (string hostile in Hostile(2))
        {
            string cell = SafeCell.Of(hostile);
            Calm(cell);
            NoFormula(cell);
            using var stream = new MemoryStream();
            CsvTable.Write(stream, ["a", "b", "c"], [["1", cell, "2"]]);
            List<string[]> rows = Rows(Encoding.UTF8.GetString(stream.ToArray()));
            Assert.Equal(["1", cell, "2"], rows[1]);
            Assert.Equal(2, rows.Count);
        }
    }

    [Fact]
    public void What_is_no_danger_stays_as_it_is() =>
        Assert.All(new[] { "mole", "soft tyre", "é 😀", "a=b", "1-2", "日本", "µ" }, text => Assert.Equal((text, text), (PlainText.Of(text), SafeCell.Of(text))));

    // The name of a tyre out of a table of readings, to screen, JSON, page, CSV and the block to paste
    [Fact]
    public void Names_in_a_log_do_no_harm_anywhere()
    {
        using var scratch = new ScratchFolder();
        string[] known = Tags(Fit(scratch, "plain", "soft", "hard").Page);
        int tried = 0;
        foreach (string[] pair in Hostile(3).Where(h => h.Trim().Length > 0).Chunk(2).Take(Math.Max(12, s_count / 400)))
        {
            (Cli cli, string page) = Fit(scratch, "evil", pair);
            Calm(cli.Output.Replace("\n", "").Replace("\r", ""));
            Calm(cli.Error.Replace("\n", "").Replace("\r", ""));
            if (cli.Code != ExitCode.Done)
            {
                Assert.Contains("error:", cli.Error);
                Assert.DoesNotContain("internal fault", cli.Error);
                continue;
            }

            tried++;
            Assert.Subset(new HashSet<string>(known), new HashSet<string>(Tags(page)));
            Assert.DoesNotContain(Tag().Matches(page), m => Handler().IsMatch(m.Value));
            Calm(page.Replace("\n", ""));
            foreach (string csv in Directory.GetFiles(scratch["evil"], "*.csv"))
            {
                Assert.All(Rows(File.ReadAllText(csv)).SelectMany(r => r), cell =>
                {
                    Calm(cell);
                    NoFormula(cell);
                });
            }

            Calm(File.ReadAllText(scratch["evil/tyres.toml"]).Replace("\n", "").Replace("\r", ""));
        }

        Assert.True(tried > 5, $"only {tried} were fitted");
    }

    private static (Cli Run, string Page) Fit(ScratchFolder scratch, string name, params string[] tyres)
    {
        var text = new StringBuilder("tyre,force [gf]\n");
        foreach (string tyre in tyres)
        {
            for (int i = 0; i < 4; i++)
            {
                text.Append(CultureInfo.InvariantCulture, $"\"{tyre.Replace("\"", "\"\"")}\",{150 + i}\n");
            }
        }

        File.WriteAllText(scratch["log.csv"], text.ToString());
        Cli run = Cli.Run("fit", scratch["log.csv"], "--load", "200 gf", "--report", "--no-plots", "--out", scratch[name]);
        return (run, File.Exists(scratch[name + "/report.html"]) ? File.ReadAllText(scratch[name + "/report.html"]) : "");
    }

    private static IEnumerable<string> Hostile(int seed)
    {
        var random = new Random(seed);
        return s_pieces.Concat(Enumerable.Range(0, s_count).Select(_ => string.Concat(Enumerable.Range(0, random.Next(1, 5)).Select(_ => random.Next(8) == 0 ? ((char)random.Next(0x10000)).ToString() : s_pieces[random.Next(s_pieces.Length)]))));
    }

    private static void Calm(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            bool isPair = i + 1 < text.Length && char.IsSurrogatePair(c, text[i + 1]);
            bool isBad = char.IsControl(c) || c is '\u2028' or '\u2029' or '\u061C' or '\u200E' or '\u200F' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') || (char.IsSurrogate(c) && !isPair);
            Assert.False(isBad, FormattableString.Invariant($"U+{(int)c:X4} at {i} of {text.Length}"));
            i += isPair ? 1 : 0;
        }
    }

    private static void NoFormula(string cell)
    {
        string seen = cell.TrimStart(' ', '\t', '\u00A0', '\u3000', '\uFEFF', '\u200B', '\u200C', '\u200D', '\u2060');
        bool isNumber = double.TryParse(seen, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
        Assert.False(!isNumber && seen.Length > 0 && "=+-@\uFF1D\uFF0B\uFF0D\uFF20".Contains(seen[0]), cell);
    }

    private static List<string[]> Rows(string csv)
    {
        using var reader = new CsvParser(new StringReader(csv), CultureInfo.InvariantCulture);
        List<string[]> rows = [];
        while (reader.Read())
        {
            rows.Add(reader.Record!);
        }

        return rows;
    }

    private static string[] Tags(string page) => [.. Tag().Matches(page).Select(m => m.Groups[1].Value.ToLowerInvariant()).Distinct()];

    [GeneratedRegex(@"<\s*(/?[a-zA-Z!][a-zA-Z0-9-]*)[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\son[a-z]+\s*=", RegexOptions.IgnoreCase)]
    private static partial Regex Handler();
}
