using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using PushSim.Analysis.Chance;
using PushSim.Files;

namespace PushSim.Scenarios.Logs;

/// <summary>Reads a record of real matches: a CSV file with the column winner (the name of a robot, or none), a row a match, and perhaps predicted, the share of wins of the first robot that was predicted beforehand.</summary>
public static class ResultsReader
{
    private const int MostRows = 100_000;

    private static readonly string[] s_nobody = ["none", "stalemate", "draw", "nobody", "-"];

    /// <summary>Reads it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="robot">Name of the first robot.</param>
    /// <param name="opponent">Name of its opponent.</param>
    /// <param name="problem">What is wrong with it; null if nothing is.</param>
    /// <returns>The record; null where something is wrong.</returns>
    public static RealResults? Read(string path, string robot, string opponent, out Problem? problem)
    {
        string name = SourceFile.Clean(path);
        try
        {
            using OpenedFile file = ReadGate.Open(path);
            if (file.State != OpenState.Open)
            {
                problem = UnopenedFile.Problem(file.State, path, ".csv");
                return null;
            }

            using var text = new StreamReader(file.Stream!, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true);
            return Read(text, name, robot, opponent, out problem);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or CsvHelperException)
        {
            problem = new Problem(name, 0, 0, Severity.Error, SourceFile.Clean(e.Message), "");
            return null;
        }
    }

    private static RealResults? Read(TextReader text, string name, string robot, string opponent, out Problem? problem)
    {
        using var parser = new CsvParser(text, new CsvConfiguration(CultureInfo.InvariantCulture) { AllowComments = true, IgnoreBlankLines = true, MaxFieldSize = LogRows.LongestCell });
        string[] head = parser.Read() ? [.. parser.Record!.Select(c => c.Trim().ToLowerInvariant())] : [];
        int winner = Array.IndexOf(head, "winner");
        int predicted = Array.IndexOf(head, "predicted");
        problem = winner >= 0 ? null : new Problem(name, 1, 1, Severity.Error, "no column \"winner\"", $"write winner in the first row, then {robot}, {opponent} or none in a row for each match; a column predicted may hold shares of wins of {robot}");
        int[] counts = new int[3];
        List<(double, bool)> past = [];
        while (problem is null && parser.Read() && counts.Sum() < MostRows)
        {
            string cell = winner < parser.Count ? parser[winner].Trim() : "";
            int who = cell.Equals(robot, StringComparison.OrdinalIgnoreCase) ? 0 : cell.Equals(opponent, StringComparison.OrdinalIgnoreCase) ? 1 : s_nobody.Contains(cell, StringComparer.OrdinalIgnoreCase) ? 2 : -1;
            if (who < 0)
            {
                problem = new Problem(name, parser.RawRow, 1, Severity.Error, $"\"{SourceFile.Clean(cell)}\" is neither {robot} nor {opponent}", "a match that nobody won has the winner none");
                return null;
            }

            counts[who]++;
            if (predicted >= 0 && predicted < parser.Count && parser[predicted].Trim() is { Length: > 0 } share)
            {
                if (Share(share) is not double p)
                {
                    problem = new Problem(name, parser.RawRow, 1, Severity.Error, $"\"{SourceFile.Clean(share)}\" is no share of wins", "write 0.62 or 62 %");
                    return null;
                }

                past.Add((p, who == 0));
            }
        }

        return problem is null ? new RealResults(counts[0], counts[1], counts[2]) { Past = past.Count > 0 ? new PastPredictions(past) : null } : null;
    }

    private static double? Share(string text)
    {
        bool isPercent = text.EndsWith('%');
        return double.TryParse(isPercent ? text[..^1] : text, NumberStyles.Float, CultureInfo.InvariantCulture, out double v) && (isPercent ? v / 100.0 : v) is >= 0.0 and <= 1.0 and double share ? share : null;
    }
}
