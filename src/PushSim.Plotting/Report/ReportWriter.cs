using System.Reflection;
using System.Security.Cryptography;
using System.Text;
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

    // Tables of more columns take the whole width of the page [1].
    private const int MostNarrow = 4;

    // Letters of its widest cells in a row, or of words of its head, from which on a table does not stand in half the width of a page.
    private const int MostLetters = 56;

    private static readonly Lazy<string> s_style = new(() => Asset("report.css"));

    private static readonly Lazy<string> s_script = new(() => Asset("replay.js"));

    private bool HasReplay => page.Replay is { Time.Length: >= 2 };

    public void Write()
    {
        WriteHead();
        html.WriteLine("<body><a class=\"skip\" href=\"#main\">Skip to the answer</a>");
        WriteTop();
        html.WriteLine("<main id=\"main\">");
        WriteVerdict();
        if (HasReplay)
        {
            WriteReplay(page.Replay!);
        }

        WriteTables();
        WriteListing();
        WriteFigures();
        WriteInputs();
        WriteList("estimates", "Estimated or converted", page.Estimates);
        html.WriteLine($"<section id=\"cautions\" aria-labelledby=\"h-cautions\"><h2 id=\"h-cautions\">Before you act on this</h2><p>{Text(page.Cautions)}</p></section>");
        html.WriteLine("</main>");
        html.WriteLine($"<footer><p>{(page.Computation.Length > 0 ? Text(page.Computation) + ". " : "")}Made by PushSim {Version()}.</p></footer>");
        if (HasReplay)
        {
            html.Write("<script type=\"application/json\" id=\"replay-data\">");
            html.Write(ReplayData.Of(page.Replay!));
            html.WriteLine("</script>");
            html.Write("<script>");
            html.Write(s_script.Value);
            html.WriteLine("</script>");
        }

        html.WriteLine("</body></html>");
    }

    private void WriteHead()
    {
        string script = HasReplay ? $"'sha256-{Hash(s_script.Value)}'" : "'none'";
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
        html.Write("<nav aria-label=\"On this page\"><ul>");
        Link(HasReplay, "replay", "Replay");
        Link(page.Tables.Count > 0, "numbers", "Numbers");
        Link(page.Listing.Length > 0, "listing", "To copy");
        Link(page.Figures.Count > 0, "plots", "Plots");
        Link(page.Inputs.Count > 0, "inputs", "Inputs");
        Link(page.Estimates.Count > 0, "estimates", "Estimates");
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

    private void WriteVerdict()
    {
        html.WriteLine($"<section class=\"verdict\" aria-labelledby=\"h-verdict\"><h2 id=\"h-verdict\">Answer</h2><p>{Text(page.Verdict)}</p></section>");
        if (page.Warnings.Count > 0)
        {
            WriteList("warnings", page.Warnings.Count == 1 ? "Warning" : "Warnings", page.Warnings);
        }
    }

    private void WriteReplay(RunResult result)
    {
        string end = FormattableString.Invariant($"{result.Time[^1]:0.###}");
        string note = page.ReplayNote.Length > 0 ? $"<p>{Text(page.ReplayNote)}</p>" : "";
        bool hasPush = result.Trace.Contact is not null;
        html.WriteLine(
            $"""
            <section id="replay" aria-labelledby="h-replay"><h2 id="h-replay">Replay from above</h2>{note}
            <noscript><p>The replay needs JavaScript; everything else on this page does without.</p></noscript>
            <div id="player" hidden>
            <svg id="stage" role="img" aria-label="The robots from above at the time of the slider; the table below has the same in numbers"></svg>
            <div class="bar" role="group" aria-label="Replay controls">
            <button type="button" id="play" aria-keyshortcuts="Space">Play</button>
            <label class="time">Time <input id="time" type="range" min="0" max="{end}" step="any" value="0"></label>
            <output id="clock" for="time" aria-live="off">0.000 s</output>
            <label>Speed <select id="speed"><option value="0.05">1/20</option><option value="0.1">1/10</option><option value="0.25">1/4</option><option value="0.5" selected>1/2</option><option value="1">real time</option><option value="2">double</option></select></label>
            <label><input id="follow" type="checkbox"> Follow</label>
            </div>
            <p class="hint">Keys while the replay has the focus: <kbd>Space</kbd> play or pause, <kbd>←</kbd> <kbd>→</kbd> one frame, with <kbd>Shift</kbd> ten, <kbd>Home</kbd> <kbd>End</kbd> first and last, <kbd>[</kbd> <kbd>]</kbd> slower and faster.</p>
            <div class="key"><span><i class="swatch load"></i>filled length: load on the wheel</span><span><i class="swatch slip"></i>colour: slip of the tread, none to {Slip(result)} m/s</span><span><i class="swatch dash"></i>dashed: slips faster than 0.05 m/s</span>{(hasPush ? "<span><i class=\"swatch arrow\"></i>arrow: push</span>" : "")}<span><i class="swatch trail"></i>trail of the centre of mass</span></div>
            <div class="scroll" tabindex="0" role="region" aria-label="Wheels at the time of the slider"><table id="wheels"><caption>Load and slip at the time of the slider</caption><thead><tr><th scope="col">Robot</th><th scope="col">Wheel</th><th scope="col" class="n">Force [N]</th><th scope="col" class="n">Slip [m/s]</th></tr></thead><tbody></tbody></table></div>
            </div></section>
            """);
    }

    private static string Slip(RunResult result) => ReplayData.FullSlip(result).ToString("0.0", CultureInfo.InvariantCulture);

    private void WriteTables()
    {
        if (page.Tables.Count == 0)
        {
            return;
        }

        html.WriteLine("<section id=\"numbers\" aria-labelledby=\"h-numbers\"><h2 id=\"h-numbers\">Numbers</h2><div class=\"tables\">");
        foreach (AnswerTable table in page.Tables)
        {
            if (table.Rows.Count > 0)
            {
                WriteTable(table, int.MaxValue);
            }

            WriteRemarks(table);
        }

        html.WriteLine("</div></section>");
    }

    private void WriteRemarks(AnswerTable table)
    {
        if (table.Remarks.Count == 0)
        {
            return;
        }

        html.Write("<div class=\"remarks\">");
        if (table.Rows.Count == 0)
        {
            html.Write($"<h3>{Text(table.Caption)}</h3>");
        }

        foreach ((string text, bool isAside) in table.Remarks)
        {
            html.Write($"<p{(isAside ? " class=\"aside\"" : "")}>{Text(text)}</p>");
        }

        html.WriteLine("</div>");
    }

    private void WriteListing()
    {
        if (page.Listing.Length == 0)
        {
            return;
        }

        string title = Text(page.ListingTitle);
        html.Write($"<section id=\"listing\" aria-labelledby=\"h-listing\"><h2 id=\"h-listing\">{title}</h2><pre tabindex=\"0\" role=\"region\" aria-label=\"{title}\">");
        foreach (string line in page.Listing.ReplaceLineEndings("\n").Split('\n'))
        {
            html.Write(Text(line));
            html.Write('\n');
        }

        html.WriteLine("</pre></section>");
    }

    private void WriteFigures()
    {
        if (page.Figures.Count == 0)
        {
            return;
        }

        html.WriteLine("<section id=\"plots\" aria-labelledby=\"h-plots\"><h2 id=\"h-plots\">Plots</h2>");
        for (int i = 0; i < page.Figures.Count; i++)
        {
            page.Figures[i].Write(html, i);
        }

        html.WriteLine("</section>");
    }

    private void WriteInputs()
    {
        if (page.Inputs.Count == 0)
        {
            return;
        }

        html.WriteLine("<section id=\"inputs\" aria-labelledby=\"h-inputs\"><h2 id=\"h-inputs\">Inputs used</h2>");
        html.WriteLine("<p>What the files say, and what the computation makes of it. Whatever no file gives has the default that <code>pushsim explain KEY</code> names.</p>");
        foreach (IGrouping<string, ReportInput> file in page.Inputs.GroupBy(i => i.File))
        {
            AnswerTable table = new AnswerTable(file.Key).AddColumn("Key").AddColumn("In the file").AddNumberColumn("Value").AddColumn("Unit").AddNumberColumn("Line");
            foreach (ReportInput input in file)
            {
                table.AddRow(input.Key, input.Text, Value(input), input.Unit, input.Line > 0 ? input.Line.ToString(CultureInfo.InvariantCulture) : "");
            }

            WriteTable(table, LongestValue);
        }

        html.WriteLine("</section>");
    }

    private static string Value(ReportInput input) => input.Value is not double value ? ""
        : input.Tolerance > 0.0 ? PlainNumber.Of(value, 5) + " ± " + PlainNumber.Of(input.Tolerance, 3)
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

    private static bool IsWide(AnswerTable table) => table.Columns.Count > MostNarrow || table.Remarks.Count > 0
        || Enumerable.Range(0, table.Columns.Count).Sum(i => table.Rows.Select(r => r[i].Length).Append(LongestWord(table.Columns[i].Title)).Max()) >= MostLetters;

    private static int LongestWord(string title) => title.Split(' ').Max(w => w.Length);

    // in a box of its own that scrolls: a wide table must not widen the page of a telephone; it takes the focus so that keys can scroll it
    private void WriteTable(AnswerTable table, int longest)
    {
        string caption = Text(table.Caption);
        html.WriteLine($"<div class=\"scroll{(IsWide(table) ? " wide" : "")}\" tabindex=\"0\" role=\"region\" aria-label=\"{caption}\"><table><caption>{caption}</caption><thead><tr>");
        foreach ((string title, bool isNumber) in table.Columns)
        {
            html.Write($"<th scope=\"col\"{(isNumber ? " class=\"n\"" : "")}>{Text(title, PlainLabel.Longest)}</th>");
        }

        html.WriteLine("</tr></thead><tbody>");
        foreach (IReadOnlyList<string> row in table.Rows)
        {
            html.Write($"<tr><th scope=\"row\"{(table.Columns[0].IsNumber ? " class=\"n\"" : "")}>{Text(row[0], Math.Min(longest, 200))}</th>");
            for (int i = 1; i < row.Count; i++)
            {
                html.Write($"<td{(table.Columns[i].IsNumber ? " class=\"n\"" : "")}>{Text(row[i], Math.Min(longest, 200))}</td>");
            }

            html.WriteLine("</tr>");
        }

        html.WriteLine("</tbody></table></div>");
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
