using CsvHelper;
using CsvHelper.Configuration;

namespace PushSim.Cli.Shared;

/// <summary>A table of cells as CSV: RFC 4180 but for its line ends, which are those of all our files (LF), UTF-8, invariant numbers, units in the names of the columns.</summary>
internal static class CsvTable
{
    public static void Write(Stream stream, string[] head, IEnumerable<string[]> rows)
    {
        using var text = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true);
        using var csv = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" });
        foreach (string[] row in rows.Prepend(head))
        {
            foreach (string cell in row)
            {
                csv.WriteField(cell);
            }

            csv.NextRecord();
        }
    }

    /// <summary>A number in a cell, empty where there is none. Eight digits: more than the model knows, few enough to keep the file small.</summary>
    public static string Number(double? value) => value is double v && double.IsFinite(v) ? v.ToString("G8", CultureInfo.InvariantCulture) : "";
}
