using System.Globalization;
using System.Text;
using PushSim.Analysis.Chance;
using PushSim.Binding;
using PushSim.Cli.Shared;
using PushSim.Runs;
using PushSim.Words.Matches;
using PushSim.Words.Terms;

namespace PushSim.Cli.Matches;

/// <summary>What must agree for two files of finished matches to belong together.</summary>
/// <param name="Command">The command whose matches they are.</param>
/// <param name="Fingerprint">Of the files that were read and of all that is drawn.</param>
/// <param name="Seed">The seed.</param>
/// <param name="Matches">Matches of each contest, all parts together [1].</param>
/// <param name="Part">Which part, from 1 [1].</param>
/// <param name="Parts">Count of parts [1].</param>
internal sealed record FinishedHead(string Command, string Fingerprint, ulong Seed, long Matches, int Part, int Parts)
{
    public string Text => string.Create(CultureInfo.InvariantCulture, $"# finished matches 3 of {Command}; fingerprint {Fingerprint}; seed {Seed}; matches {Matches}; part {Part} of {Parts}");
}

/// <summary>
/// A file of finished matches: a part of a whole, or what an interrupted run left to go on from. One row a match, added as it ends; a row that was cut off by a
/// crash is left out when the file is read.
/// </summary>
internal sealed class FinishedMatches : IDisposable
{
    /// <summary>Ending of the file that is written beside and then renamed.</summary>
    public const string Beside = ".new";

    /// <summary>Columns of a match; before them a file of finished matches has the number of its contest, from 0.</summary>
    public const string Columns = "match,winner,ending,ground_gained_m,end_time_s,limit,opponent_limit,cause";
    private const int Cells = 8;
    private const string SecondsMark = "# seconds ";

    private readonly StreamWriter _writer;

    private FinishedMatches(StreamWriter writer) => _writer = writer;

    public static string NameOf(int part, int parts) => string.Create(CultureInfo.InvariantCulture, $"part-{part}-of-{parts}.csv");

    /// <summary>The count of parts that a file's name tells; 0 if it is no name of a part.</summary>
    public static int PartsOf(string path)
    {
        string[] words = Path.GetFileNameWithoutExtension(path).Split('-');
        return words.Length == 4 && int.TryParse(words[3], NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 0;
    }

    /// <summary>The matches of a file whose head is as expected; null if it is not there or is of something else.</summary>
    public static IReadOnlyList<(int Contest, MatchEnd End)>? Read(string path, FinishedHead head, out double seconds)
    {
        seconds = 0.0;
        if (!File.Exists(path))
        {
            return null;
        }

        string text = File.ReadAllText(path);
        string[] lines = text.Split('\n');
        if (lines[0].TrimEnd('\r') != head.Text)
        {
            return null;
        }

        List<(int Contest, MatchEnd End)> outcomes = [];

        // what follows the last line end was cut off
        foreach (string line in lines[1..^1])
        {
            if (line.StartsWith(SecondsMark, StringComparison.Ordinal))
            {
                seconds += double.TryParse(line[SecondsMark.Length..], NumberStyles.Float, CultureInfo.InvariantCulture, out double s) ? s : 0.0;
            }
            else if (line.IndexOf(',') is int comma and > 0 && int.TryParse(line.AsSpan(0, comma), NumberStyles.None, CultureInfo.InvariantCulture, out int contest) && Row(line[(comma + 1)..].TrimEnd('\r')) is MatchEnd outcome)
            {
                outcomes.Add((contest, outcome));
            }
        }

        return outcomes;
    }

    /// <summary>Begins a file anew with what is finished already; rows are added to it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="head">Its head.</param>
    /// <param name="finished">Finished matches of each contest.</param>
    /// <param name="seconds">Time that they took [s].</param>
    public static FinishedMatches Begin(string path, FinishedHead head, IReadOnlyList<IEnumerable<MatchEnd>> finished, double seconds)
    {
        string beside = path + Beside;
        using (var writer = new StreamWriter(beside, append: false, new UTF8Encoding(false)) { NewLine = "\n" })
        {
            writer.WriteLine(head.Text);
            writer.WriteLine("contest," + Columns);
            for (int contest = 0; contest < finished.Count; contest++)
            {
                foreach (MatchEnd outcome in finished[contest])
                {
                    writer.WriteLine(Line(contest, outcome));
                }
            }

            WriteSeconds(writer, seconds);
        }

        File.Move(beside, path, overwrite: true);
        return new FinishedMatches(new StreamWriter(path, append: true, new UTF8Encoding(false)) { NewLine = "\n", AutoFlush = true });
    }

    public void Add(int contest, MatchEnd outcome) => _writer.WriteLine(Line(contest, outcome));

    public void AddSeconds(double seconds) => WriteSeconds(_writer, seconds);

    public void Dispose() => _writer.Dispose();

    /// <summary>A row; a text cell that a spreadsheet could take for a formula gets an apostrophe.</summary>
    public static string Line(MatchEnd o)
    {
        string winner = o.HasFailed ? "failed" : o.Winner switch { 0 => "robot", 1 => "opponent", _ => "none" };
        string cause = MatchWords.Cause(o).Replace('"', '\'');
        cause = SafeCell.Of(cause);
        return string.Create(CultureInfo.InvariantCulture, $"{o.Number},{winner},{(o.HasFailed ? "" : o.Ending.ToString().ToLowerInvariant())},{o.GroundGained:R},{o.EndTime:R},{Limit(o, o.Limit)},{Limit(o, o.OpponentLimit)},\"{cause}\"");
    }

    private static string Line(int contest, MatchEnd o) => string.Create(CultureInfo.InvariantCulture, $"{contest},{Line(o)}");

    private static string Limit(MatchEnd o, BindingKind limit) => o.HasFailed ? "" : BindingTable.Key(limit);

    private static BindingKind? Limit(string cell) => BindingTable.Parse(cell);

    private static void WriteSeconds(TextWriter writer, double seconds)
    {
        if (seconds > 0.0)
        {
            writer.WriteLine(SecondsMark + seconds.ToString("R", CultureInfo.InvariantCulture));
        }
    }

    private static MatchEnd? Row(string line)
    {
        string[] cells = line.Split(',', Cells);
        if (cells.Length != Cells || !cells[^1].EndsWith('"') || cells[^1].Length < 2
            || !long.TryParse(cells[0], NumberStyles.None, CultureInfo.InvariantCulture, out long number)
            || !double.TryParse(cells[3], NumberStyles.Float, CultureInfo.InvariantCulture, out double ground)
            || !double.TryParse(cells[4], NumberStyles.Float, CultureInfo.InvariantCulture, out double end))
        {
            return null;
        }

        if (cells[1] == "failed")
        {
            return MatchEnd.Failed(number, MatchFailure.Draws, cells[^1].Trim('"'));
        }

        int winner = cells[1] switch { "robot" => 0, "opponent" => 1, _ => -1 };
        return Enum.TryParse(cells[2], ignoreCase: true, out ShoveEnding ending) && Limit(cells[5]) is BindingKind own && Limit(cells[6]) is BindingKind other
            ? new MatchEnd(number, winner, ending, ground, end, own, other) : null;
    }
}
