using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using PushSim.Plotting.Drawing;
using PushSim.Words.Tables;

namespace PushSim.Plotting.Report;

/// <summary>
/// Lays a page out. Style and script stand in the page and are allowed by their hashes alone; nothing else may run or be fetched.
/// Every text goes through <see cref="HtmlText"/>.
/// </summary>
internal sealed class ReportWriter(TextWriter html, ReportPage page)
{
    // Letters of a value from a file that the table of inputs shows [1].
    private const int LongestValue = 120;

    private static readonly Lazy<string> s_style = new(() => Asset("tokens.css") + Asset("report.css"));

    private static readonly Lazy<string> s_script = new(() => ReportAsset.Script("motion.js") + Asset("replay.js"));

    private static readonly Lazy<string> s_copy = new(() => Asset("copy.js"));

    private readonly TableWriter _tables = new(html);

    // a page runs no more than it needs
    private string Script => (HasReplay ? s_script.Value : "") + (page.Listing.Length > 0 ? s_copy.Value : "");

    // the first figure stands in the card, but for tiles
    private int Others => page.Figures.Count - First;

    private int First => page.Card.IsTiled ? 0 : 1;

    private bool HasReplay => page.Replay is { Time.Length: >= 2 };

    public void Write()
    {
        WriteHead();
        html.WriteLine("<body><a class=\"skip\" href=\"#main\">Skip to the answer</a>");
        WriteTop();
        html.WriteLine("<main id=\"main\">");
        new CardWriter(html, page.Card).Write(page.Figures.Count > 0 ? page.Figures[0] : null);
        WriteLinks();
        WriteList("warnings", page.Warnings.Count == 1 ? "Warning" : "Warnings", page.Warnings);
        if (HasReplay)
        {
            ReplayWriter.Write(html, page.Replay!, page.ReplayNote);
        }

        WriteFigures();
        WriteListing();
        WriteTables();
        WriteInputs();
        WriteEstimates();
        WriteGlossary();
        html.WriteLine($"<section id=\"cautions\" aria-labelledby=\"h-cautions\"><h2 id=\"h-cautions\">Before you act on this</h2><p>{Text(page.Cautions)}</p></section>");
        html.WriteLine("</main>");
        html.WriteLine($"<footer><p>{(page.Computation.Length > 0 ? Text(page.Computation) + ". " : "")}Made by PushSim {Version()}.</p></footer>");
        if (HasReplay)
        {
            html.Write("<script type=\"application/json\" id=\"replay-data\">");
            html.Write(ReplayData.Of(page.Replay!));
            html.WriteLine("</script>");
        }

        if (Script is { Length: > 0 } script)
        {
            html.Write("<script>");
            html.Write(script);
            html.WriteLine("</script>");
        }

        html.WriteLine("</body></html>");
    }

    private void WriteHead()
    {
        string script = Script.Length > 0 ? $"'sha256-{Hash(Script)}'" : "'none'";
        html.WriteLine("<!DOCTYPE html>");
        html.WriteLine("<html lang=\"en\"><head><meta charset=\"utf-8\">");
        html.WriteLine(
            $"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-{Hash(s_style.Value)}'; script-src {script}; base-uri 'none'; form-action 'none'\">");
        html.WriteLine("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"><meta name=\"color-scheme\" content=\"light dark\">");
        html.WriteLine("<meta name=\"referrer\" content=\"no-referrer\">");
        html.WriteLine($"<title>{Text(page.Subject, PlainLabel.Longest)}: {Text(page.Command)} - PushSim</title>");
        html.Write("<style>");
        html.Write(s_style.Value);
        html.WriteLine("</style></head>");
    }

    private void WriteTop()
    {
        string subject = Text(page.Subject, PlainLabel.Longest);
        html.WriteLine($"<header><p class=\"kind\">PushSim {Text(page.Command)} <span>{subject}</span></p>");
        html.WriteLine($"<h1>{(page.Question.Length > 0 ? Text(page.Question) : subject)}</h1></header>");
    }

    private void WriteLinks()
    {
        html.Write("<nav aria-label=\"On this page\"><ul>");
        Link(HasReplay, "replay", "Replay");
        Link(Others > 0, "plots", "Pictures");
        Link(page.Listing.Length > 0, "listing", "To copy");
        Link(page.Tables.Count > 0, "numbers", "Numbers");
        Link(page.Inputs.Count > 0, "inputs", "What went in");
        Link(page.Estimates.Count > 0, "estimates", "Estimates");
        Link(true, "words", "Words");
        Link(true, "cautions", "Cautions");
        html.WriteLine("</ul></nav>");

        void Link(bool isThere, string id, string words)
        {
            if (isThere)
            {
                html.Write($"<li><a href=\"#{id}\">{words}</a></li>");
            }
        }
    }

    private void WriteTables()
    {
        if (page.Tables.Count == 0)
        {
            return;
        }

        html.WriteLine($"<section id=\"numbers\" aria-labelledby=\"h-numbers\"><h2 id=\"h-numbers\">Numbers</h2><p class=\"whole\">{Text(page.Verdict)}</p>");
        _tables.Write([.. page.Tables.Where(t => !t.IsFolded)]);
        AnswerTable[] folded = [.. page.Tables.Where(t => t.IsFolded)];
        if (folded.Length > 0)
        {
            html.WriteLine($"<details><summary>{(folded.Length == 1 ? "One more table" : $"{folded.Length} more tables")}: {Text(string.Join(", ", folded.Select(t => t.Caption)))}</summary>");
            _tables.Write(folded);
            html.WriteLine("</details>");
        }

        html.WriteLine("</section>");
    }

    private void WriteListing()
    {
        if (page.Listing.Length == 0)
        {
            return;
        }

        string title = Text(page.ListingTitle);
        html.Write($"<section id=\"listing\" aria-labelledby=\"h-listing\"><h2 id=\"h-listing\">{title}</h2><button type=\"button\" class=\"copy\" hidden>Copy</button><pre tabindex=\"0\" role=\"region\" aria-label=\"{title}: the lines\">");
        foreach (string line in page.Listing.ReplaceLineEndings("\n").Split('\n'))
        {
            html.Write(Text(line));
            html.Write('\n');
        }

        html.WriteLine("</pre></section>");
    }

    private void WriteFigures()
    {
        if (Others <= 0)
        {
            return;
        }

        html.WriteLine("<section id=\"plots\" aria-labelledby=\"h-plots\"><h2 id=\"h-plots\">Pictures</h2>");
        int shown = Math.Min(page.Figures.Count, PlotSheet.Usual);
        for (int i = First; i < shown; i++)
        {
            page.Figures[i].Write(html, i);
        }

        if (shown < page.Figures.Count)
        {
            html.WriteLine($"<details><summary>{page.Figures.Count - shown} more {(page.Figures.Count - shown == 1 ? "picture" : "pictures")}: {Text(string.Join("; ", page.Figures.Skip(shown).Select(f => f.Title)))}</summary>");
            for (int i = shown; i < page.Figures.Count; i++)
            {
                page.Figures[i].Write(html, i);
            }

            html.WriteLine("</details>");
        }

        html.WriteLine("</section>");
    }

    private void WriteInputs()
    {
        if (page.Inputs.Count == 0)
        {
            return;
        }

        ReportInput[] own = [.. page.Inputs.Where(i => i.IsOwn)];
        ReportInput[] usual = [.. page.Inputs.Where(i => !i.IsOwn)];
        html.WriteLine($"<section id=\"inputs\" aria-labelledby=\"h-inputs\"><h2 id=\"h-inputs\">What went in</h2><details><summary>{own.Length} values that differ from what is usual</summary>");
        html.WriteLine("<p>What the files say, and what the computation makes of it. Whatever no file gives has the default that <code>pushsim explain KEY</code> names.</p>");
        WriteInputs(own, hasUsual: own.Any(i => i.Usual.Length > 0));
        html.WriteLine("</details>");
        if (usual.Length > 0)
        {
            html.WriteLine($"<details><summary>{usual.Length} values that a file gives as they would be anyway</summary>");
            WriteInputs(usual, hasUsual: false);
            html.WriteLine("</details>");
        }

        html.WriteLine("</section>");
    }

    private void WriteInputs(ReportInput[] inputs, bool hasUsual)
    {
        foreach (IGrouping<string, ReportInput> file in inputs.GroupBy(i => i.File))
        {
            AnswerTable table = new AnswerTable(file.Key).AddColumn("Key").AddColumn("In the file").AddNumberColumn("Value").AddColumn("Unit").AddNumberColumn("Line");
            _ = hasUsual ? table.AddColumn("Without it") : table;
            foreach (ReportInput input in file)
            {
                table.AddRow([input.Key, input.Text, Value(input), input.Unit, input.Line > 0 ? input.Line.ToString(CultureInfo.InvariantCulture) : "", .. hasUsual ? [input.Usual] : Array.Empty<string>()]);
            }

            _tables.Write(table, LongestValue);
        }
    }

    // the words that this page uses
    private void WriteGlossary()
    {
        string said = string.Join(' ', [page.Verdict, page.Card.Answer, page.Card.Facts, page.Card.Sure, page.Card.Next, .. page.Card.Numbers.Select(n => n.Label), .. page.Warnings, .. page.Tables.Select(t => t.Caption), .. page.Tables.SelectMany(t => t.Rows.Select(r => r[0])), .. page.Figures.Select(f => f.Title)]);
        (string Word, string Meaning)[] used = [.. Glossary.All.Where(g => said.Contains(g.Word, StringComparison.OrdinalIgnoreCase))];
        if (used.Length == 0)
        {
            return;
        }

        html.WriteLine("<section id=\"words\" aria-labelledby=\"h-words\"><h2 id=\"h-words\">Words</h2><details><summary>What the words of this page mean</summary><dl>");
        foreach ((string word, string meaning) in used)
        {
            html.WriteLine($"<dt>{Text(word)}</dt><dd>{Text(meaning)}</dd>");
        }

        html.WriteLine("</dl></details></section>");
    }

    private void WriteEstimates()
    {
        if (page.Estimates.Count == 0)
        {
            return;
        }

        html.WriteLine($"<section id=\"estimates\" aria-labelledby=\"h-estimates\"><h2 id=\"h-estimates\">Estimated or converted</h2><details><summary>{page.Estimates.Count} {(page.Estimates.Count == 1 ? "value" : "values")}</summary><ul>");
        foreach (string line in page.Estimates)
        {
            html.WriteLine($"<li>{Text(line)}</li>");
        }

        html.WriteLine("</ul></details></section>");
    }

    private static string Value(ReportInput input) => input.Value is not double value ? ""
        : input.Tolerance > 0.0 ? PlainNumber.Of(value, 5) + " " + ToleranceText.Of(value, input.Tolerance, input.Spread, 3)
        : PlainNumber.Of(value, 5);

    private void WriteList(string id, string heading, IReadOnlyList<string> lines)
    {
        if (lines.Count == 0)
        {
            return;
        }

        html.WriteLine($"<section id=\"{id}\" aria-labelledby=\"h-{id}\"><h2 id=\"h-{id}\">{heading}</h2><ul>");
        foreach (string line in lines)
        {
            html.WriteLine($"<li>{Text(line)}</li>");
        }

        html.WriteLine("</ul></section>");
    }

    private static string Text(string text, int longest = 2000) => HtmlText.Of(text, longest);

    private static string Version() => typeof(ReportWriter).Assembly.GetName().Version?.ToString(3) ?? "";

    private static string Hash(string text) => Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string Asset(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name) ?? throw new InvalidOperationException($"{name} is not in the assembly");
        using var reader = new StreamReader(stream, Encoding.UTF8);

        // a browser makes every line end one character before it hashes
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
