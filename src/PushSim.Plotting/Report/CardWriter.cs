using System.Text.RegularExpressions;
using PushSim.Plotting.Drawing;
using PushSim.Words.Tables;

namespace PushSim.Plotting.Report;

/// <summary>The answer card at the top of every page: sentence, why, one picture, three numbers, how sure, what next. Names of robots stand in their colours.</summary>
internal sealed class CardWriter(TextWriter html, AnswerCard card)
{
    // Height of the bar of wins [px].
    private const int BarHeight = 26;

    /// <summary>Writes it.</summary>
    /// <param name="hero">Its picture; null for none.</param>
    public void Write(ReportFigure? hero)
    {
        string facts = card.Facts.Length == 0 ? "" : $"<small>{Named(card.Facts)}</small>";
        html.WriteLine($"<section class=\"card{(hero is null || card.IsTiled ? " wide" : "")}\" aria-labelledby=\"h-answer\"><h2 class=\"vh\" id=\"h-answer\">The answer</h2><p class=\"say\">{Named(card.Answer)}{facts}</p>");
        if (hero is not null && !card.IsTiled)
        {
            html.WriteLine("<div class=\"hero\">");
            WriteSplit();
            hero.WriteHero(html);
            html.WriteLine("</div>");
        }
        else
        {
            WriteSplit();
        }

        WriteNumbers();
        Line("How sure:", card.Sure);
        Line("Next:", card.Next);
        foreach (Suggestion s in card.Suggestions)
        {
            html.WriteLine($"<p class=\"sure\"><b>{Text(s.Tells)}:</b> <code>{Text(s.Line)}</code></p>");
        }

        html.WriteLine("</section>");
    }

    private void WriteNumbers()
    {
        if (card.Numbers.Count == 0)
        {
            return;
        }

        html.Write("<div class=\"nums\">");
        foreach (CardNumber n in card.Numbers.Take(AnswerCard.PageNumbers))
        {
            string beside = n.Beside.Length == 0 ? "" : $" <small>{Text(char.IsAsciiDigit(n.Beside[0]) ? $"({n.Beside})" : n.Beside)}</small>";
            string note = n.Note.Length == 0 ? "" : $"<p>{Named(Capital(n.Note))}</p>";
            html.Write($"<div class=\"num\"><h3>{Named(Capital(n.Label))}</h3><b>{Text(n.Value)}{beside}</b>{note}</div>");
        }

        html.WriteLine("</div>");
    }

    // wins from the left, those of the opponent from the right, what has no winner left empty; the interval is shaded
    private void WriteSplit()
    {
        if (card.Split is not { } s)
        {
            return;
        }

        string words = string.Create(CultureInfo.InvariantCulture, $"{card.Robots[0]} wins {100.0 * s.Wins:0.#} of 100, {card.Robots[1]} {100.0 * s.Losses:0.#}; 95 % sure of {100.0 * s.Low:0.#} to {100.0 * s.High:0.#} wins");
        html.WriteLine($"<svg class=\"split\" width=\"100%\" height=\"{BarHeight}\" role=\"img\" aria-label=\"{Text(words)}\"><defs><pattern id=\"hatch\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><rect class=\"f1\" width=\"3\" height=\"6\"/></pattern></defs>");
        html.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"<rect class=\"f0\" width=\"{100.0 * s.Wins:0.##}%\" height=\"{BarHeight}\"/><rect fill=\"url(#hatch)\" x=\"{100.0 * (1.0 - s.Losses):0.##}%\" width=\"{100.0 * s.Losses:0.##}%\" height=\"{BarHeight}\"/><rect class=\"range\" x=\"{100.0 * s.Low:0.##}%\" width=\"{100.0 * (s.High - s.Low):0.##}%\" height=\"{BarHeight}\"/><line class=\"at\" x1=\"{100.0 * s.Wins:0.##}%\" x2=\"{100.0 * s.Wins:0.##}%\" y2=\"{BarHeight}\"/><rect class=\"frame\" width=\"100%\" height=\"{BarHeight}\"/></svg>"));
        html.WriteLine($"<p class=\"splitkey\"><span class=\"r0\">{Text(card.Robots[0], PlainLabel.Longest)}</span> solid, <span class=\"r1\">{Text(card.Robots[1], PlainLabel.Longest)}</span> hatched, shaded: 95 % sure</p>");
    }

    private void Line(string head, string text)
    {
        if (text.Length > 0)
        {
            html.WriteLine($"<p class=\"sure\"><b>{head}</b> {Named(Capital(text))}</p>");
        }
    }

    // names of robots in their colours, the longer name first where one is part of the other
    private string Named(string text)
    {
        string[] names = [.. card.Robots.Where(n => n.Length is > 0 and <= PlainLabel.Longest)];
        if (names.Length < 2 || names.Distinct().Count() < names.Length)
        {
            return Text(text);
        }

        var pattern = new Regex($@"(?<!\w)({string.Join('|', names.OrderByDescending(n => n.Length).Select(Regex.Escape))})(?!\w)", RegexOptions.IgnoreCase, TimeSpan.FromSeconds(1.0));
        var coloured = new System.Text.StringBuilder();
        int done = 0;
        foreach (Match m in pattern.Matches(text))
        {
            int k = Array.FindIndex(names, n => n.Equals(m.Value, StringComparison.OrdinalIgnoreCase));
            coloured.Append(Text(text[done..m.Index])).Append(CultureInfo.InvariantCulture, $"<span class=\"r{k}\">{Text(m.Value)}</span>");
            done = m.Index + m.Length;
        }

        return coloured.Append(Text(text[done..])).ToString();
    }

    // a name keeps its letters
    private string Capital(string text) => text.Length == 0 || card.Robots.Any(r => text.StartsWith(r, StringComparison.Ordinal)) ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string Text(string text, int longest = 2000) => HtmlText.Of(text, longest);
}
