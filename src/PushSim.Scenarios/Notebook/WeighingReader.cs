using System.Text.RegularExpressions;
using CsvHelper;
using CsvHelper.Configuration;
using PushSim.Analysis.Wear;
using PushSim.Files;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Notebook;

/// <summary>Reads weighings of tyres: a CSV file with the columns before, after and time, their units behind the names ("before [g]", "time_s"), a row for each drive.</summary>
public static partial class WeighingReader
{
    private const int MostRows = 10_000;

    private static readonly (string Name, Dimension Dimension, string Unit)[] s_columns = [("before", Dimension.Mass, "g"), ("after", Dimension.Mass, "g"), ("time", Dimension.Time, "s")];

    /// <summary>Whether a file is one of weighings, by its head; false where there is none. Throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/> where it cannot be read.</summary>
    /// <param name="path">The file.</param>
    public static bool IsWeighings(string path)
    {
        try
        {
            // a pipe that is opened and closed again would lose what is written into it
            return Disk.Look(RealPath.Of(path)) == PathKind.File && NotebookReader.Text(path) is string text && HeadOf(text) is not null;
        }
        catch (Exception e) when (e is ArgumentException or NotSupportedException or CsvHelperException)
        {
            return false;
        }
    }

    /// <summary>Reads it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="problem">What is wrong with it; null if nothing is.</param>
    /// <returns>The weighings; empty where something is wrong.</returns>
    public static IReadOnlyList<Weighing> Read(string path, out Problem? problem)
    {
        string name = SourceFile.Clean(path);
        try
        {
            return Parse(name, NotebookReader.Text(path) ?? "", out problem);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or CsvHelperException)
        {
            problem = new Problem(name, 0, 0, Severity.Error, SourceFile.Clean(e.Message), "check the name and the folder");
            return [];
        }
    }

    /// <summary>Reads a text.</summary>
    /// <param name="name">Name that messages use.</param>
    /// <param name="text">The text.</param>
    /// <param name="problem">What is wrong with it; null if nothing is.</param>
    /// <returns>The weighings; empty where something is wrong.</returns>
    public static IReadOnlyList<Weighing> Parse(string name, string text, out Problem? problem)
    {
        problem = null;
        if (HeadOf(text) is not (int Index, double Factor)[] head)
        {
            problem = new Problem(name, 1, 1, Severity.Error, "these are no weighings", "write before [g], after [g], time [s] in the first row, then a row for each drive");
            return [];
        }

        List<Weighing> rows = [];
        using CsvParser parser = Parser(text);
        _ = parser.Read();
        while (problem is null && rows.Count < MostRows && parser.Read())
        {
            double[] v = new double[head.Length];
            for (int i = 0; i < head.Length; i++)
            {
                string cell = head[i].Index < parser.Count ? parser[head[i].Index].Trim() : "";
                if (!double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out v[i]) || !(v[i] > 0.0) || !double.IsFinite(v[i]))
                {
                    problem = new Problem(name, parser.RawRow, 1, Severity.Error, $"\"{SourceFile.Clean(cell)}\" is no {s_columns[i].Name} above zero", "write numbers with a point and without unit");
                    return [];
                }

                v[i] *= head[i].Factor;
            }

            rows.Add(new Weighing(v[0], v[1], v[2], Math.Max(head[0].Factor * StepOf(parser[head[0].Index]), head[1].Factor * StepOf(parser[head[1].Index]))));
        }

        problem = rows.Count > 0 ? problem : new Problem(name, 0, 0, Severity.Error, "there is no weighing in it", "add a row: mass of all tyres before and after, time driven");
        return rows;
    }

    private static (int Index, double Factor)[]? HeadOf(string text)
    {
        using CsvParser parser = Parser(text.TrimStart('\uFEFF'));
        if (!parser.Read())
        {
            return null;
        }

        (string Name, string Unit)[] cells = [.. parser.Record!.Select(c => HeadPattern().Match(c.Trim().ToLowerInvariant())).Select(m => (m.Groups["name"].Value, m.Groups["unit"].Value))];
        List<(int, double)> found = [];
        foreach ((string name, Dimension dimension, string unit) in s_columns)
        {
            int at = Array.FindIndex(cells, c => c.Name == name);
            if (at < 0 || !UnitTable.TryFind(dimension, cells[at].Unit.Length > 0 ? cells[at].Unit : unit, out Unit known))
            {
                return null;
            }

            found.Add((at, known.Factor));
        }

        return [.. found];
    }

    // One unit of the last digit of a number.
    private static double StepOf(string number)
    {
        string digits = number.Trim().Split('e', 'E')[0];
        int point = digits.IndexOf('.', StringComparison.Ordinal);
        return point < 0 ? 1.0 : Math.Pow(10.0, point + 1 - digits.Length);
    }

    private static CsvParser Parser(string text) =>
        new(new StringReader(text), new CsvConfiguration(CultureInfo.InvariantCulture) { AllowComments = true, IgnoreBlankLines = true, MaxFieldSize = LogRows.LongestCell });

    [GeneratedRegex(@"^(?:mass[ _])?(?<name>[a-z]+)\s*(?:[\[(_]\s*(?<unit>[a-z]+)\s*[\])]?)?$", RegexOptions.ExplicitCapture)]
    private static partial Regex HeadPattern();
}
