using CsvHelper;
using CsvHelper.Configuration;
using PushSim.Scenarios.Logs;

namespace PushSim.Scenarios.Notebook;

/// <summary>Pulls that a person read off a display and types: one a line, "soft, 1360 g, 11.2 N, 9.8 N, clean". Tyre, load, peak, sliding, note; what is not known stays empty.</summary>
public static class HandPulls
{
    private const int Most = 500;
    private const int LongestName = 100;

    /// <summary>Reads lines; either all of them are pulls or none is given.</summary>
    /// <param name="text">The lines; cells between commas, semicolons or tabs.</param>
    /// <param name="when">The moment that they are noted.</param>
    /// <param name="wrong">What stands against them, with its line; null if nothing does.</param>
    public static IReadOnlyList<PullRow> Parse(string text, DateTime? when, out Problem? wrong)
    {
        string separator = text.Contains('\t', StringComparison.Ordinal) ? "\t" : text.Contains(';', StringComparison.Ordinal) ? ";" : ",";
        using var parser = new CsvParser(new StringReader(text), new CsvConfiguration(CultureInfo.InvariantCulture) { Delimiter = separator, TrimOptions = TrimOptions.Trim, BadDataFound = null, IgnoreBlankLines = true, MaxFieldSize = LogRows.LongestCell });
        List<PullRow> rows = [];
        wrong = null;
        try
        {
            while (wrong is null && parser.Read())
            {
                string[] cells = parser.Record ?? [];
                if (cells.All(c => c.Length == 0))
                {
                    continue;
                }

                string Cell(int k) => k < cells.Length ? cells[k] : "";
                PullRow? row = Of(Cell(0), Cell(1), Cell(2), Cell(3), string.Join(separator + " ", cells.Skip(4)), when, out Problem? fault);
                wrong = fault is null ? null : fault with { Line = parser.RawRow, Message = FormattableString.Invariant($"line {parser.RawRow}: {fault.Message}") };
                if (row is not null)
                {
                    rows.Add(row);
                }

                wrong ??= rows.Count > Most ? Wrong(FormattableString.Invariant($"these are more than {Most} lines"), "put them into the notebook with a spreadsheet") : null;
            }
        }
        catch (CsvHelperException)
        {
            wrong = Wrong(FormattableString.Invariant($"line {parser.RawRow}: a cell is longer than {LogRows.LongestCell} characters"), "is a quotation mark left open?");
        }

        wrong ??= rows.Count == 0 ? Wrong("there is no pull in it", "write tyre, load, peak, sliding: soft, 1360 g, 11.2 N, 9.8 N") : null;
        return wrong is null ? rows : [];
    }

    /// <summary>One pull out of its texts; null if something stands against it.</summary>
    /// <param name="tyre">The tyre's name.</param>
    /// <param name="load">Load on the tested tyres, a force or a mass; empty if not known.</param>
    /// <param name="peak">Greatest force; empty if not known.</param>
    /// <param name="sliding">Steady force; empty if not known.</param>
    /// <param name="note">What else was noted.</param>
    /// <param name="when">The moment that it is noted.</param>
    /// <param name="wrong">What stands against it; null if nothing does.</param>
    public static PullRow? Of(string tyre, string load, string peak, string sliding, string note, DateTime? when, out Problem? wrong)
    {
        Problem? found = tyre.Trim().Length is 0 or > LongestName ? Wrong("the row names no tyre", "write its name first: soft, 1360 g, 11.2 N, 9.8 N") : null;
        double? Force(string name, string text)
        {
            if (text.Trim().Length == 0 || found is not null)
            {
                return null;
            }

            bool isRead = FitArguments.TryForce(text, out double newton, out string message);
            found = !isRead ? Wrong($"{name}: {message}", "") : newton <= 0.0 ? Wrong($"{name} is {SourceFile.Clean(text, 40)}, and must be above zero", "forces have no sign here") : null;
            return newton;
        }

        (double? normal, double? high, double? steady) = (Force("load", load), Force("peak", peak), Force("sliding", sliding));
        wrong = found ?? (high is null && steady is null ? Wrong("the row has neither a peak nor a sliding force", "write one with its unit, for example 11.2 N") : null);
        return wrong is null ? new PullRow { When = when, Tyre = tyre.Trim(), Load = normal, Peak = high, Sliding = steady, Note = note.Trim() } : null;
    }

    private static Problem Wrong(string message, string help) => new("the lines", 0, 0, Severity.Error, message, help);
}
