using PushSim.Binding;
using PushSim.Runs;

namespace PushSim.Analysis.Chance;

/// <summary>Finished matches as text: a part of a whole, or what an interrupted run left to go on from. One row a match, added as it ends; a row that was cut off by a
/// crash is left out when the text is read.</summary>
public sealed class FinishedMatches : IDisposable
{
    /// <summary>Columns of a match; before them kept matches have the number of its contest, from 0.</summary>
    public const string Columns = "match,winner,ending,ground_gained_m,end_time_s,limit,opponent_limit,cause";
    private const int Cells = 8;
    private const string SecondsMark = "# seconds ";

    private readonly TextWriter _writer;
    private readonly IMatchWords _words;

    private FinishedMatches(TextWriter writer, IMatchWords words) => (_writer, _words) = (writer, words);

    /// <summary>The matches of a text whose head is as expected; null if it is not there or is of something else.</summary>
    /// <param name="reader">The text; null if there is none.</param>
    /// <param name="head">The head that it must have.</param>
    /// <param name="words">Keys and words.</param>
    /// <param name="seconds">Time that they took [s].</param>
    public static IReadOnlyList<(int Contest, MatchEnd End)>? Read(TextReader? reader, FinishedHead head, IMatchWords words, out double seconds)
    {
        seconds = 0.0;
        string[] lines = reader?.ReadToEnd().Split('\n') ?? [""];
        if (lines[0].TrimEnd('\r') != head.Text)
        {
            return null;
        }

        List<(int Contest, MatchEnd End)> outcomes = [];

        // what follows the last line end was cut off
        foreach (string line in lines.Skip(1).SkipLast(1))
        {
            if (line.StartsWith(SecondsMark, StringComparison.Ordinal))
            {
                seconds += double.TryParse(line[SecondsMark.Length..], NumberStyles.Float, CultureInfo.InvariantCulture, out double s) ? s : 0.0;
            }
            else if (line.IndexOf(',') is int comma and > 0 && int.TryParse(line.AsSpan(0, comma), NumberStyles.None, CultureInfo.InvariantCulture, out int contest) && Row(line[(comma + 1)..].TrimEnd('\r'), words) is MatchEnd outcome)
            {
                outcomes.Add((contest, outcome));
            }
        }

        return outcomes;
    }

    /// <summary>Begins a text anew with what is finished already; rows are added to it.</summary>
    /// <param name="store">Where it is kept, by the name of the head.</param>
    /// <param name="head">Its head.</param>
    /// <param name="words">Keys and words.</param>
    /// <param name="finished">Finished matches of each contest.</param>
    /// <param name="seconds">Time that they took [s].</param>
    public static FinishedMatches Begin(IMatchStore store, FinishedHead head, IMatchWords words, IReadOnlyList<IEnumerable<MatchEnd>> finished, double seconds) => new(store.Begin(head.Name, writer =>
    {
        writer.WriteLine(head.Text);
        writer.WriteLine("contest," + Columns);
        for (int contest = 0; contest < finished.Count; contest++)
        {
            foreach (MatchEnd outcome in finished[contest])
            {
                writer.WriteLine(Line(contest, outcome, words));
            }
        }

        WriteSeconds(writer, seconds);
    }), words);

    /// <summary>The matches of one contest as a table of their own.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="fingerprint">Of the files that were read and of all that is drawn.</param>
    /// <param name="plan">What was asked.</param>
    /// <param name="words">Keys and words.</param>
    /// <param name="ends">The matches.</param>
    public static void WriteTable(TextWriter writer, string fingerprint, MatchPlan plan, IMatchWords words, IEnumerable<MatchEnd> ends)
    {
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"# matches; fingerprint {fingerprint}; seed {plan.Seed}; asked {plan.Matches}"));
        writer.WriteLine(Columns);
        foreach (MatchEnd outcome in ends)
        {
            writer.WriteLine(Line(outcome, words));
        }
    }

    /// <summary>Adds a match.</summary>
    /// <param name="contest">Number of its contest, from 0 [1].</param>
    /// <param name="outcome">The match.</param>
    public void Add(int contest, MatchEnd outcome) => _writer.WriteLine(Line(contest, outcome, _words));

    /// <summary>Adds time that matches took.</summary>
    /// <param name="seconds">The time [s].</param>
    public void AddSeconds(double seconds) => WriteSeconds(_writer, seconds);

    /// <inheritdoc/>
    public void Dispose() => _writer.Dispose();

    /// <summary>A row; a text cell that a spreadsheet could take for a formula gets an apostrophe.</summary>
    public static string Line(MatchEnd o, IMatchWords words)
    {
        string winner = o.HasFailed ? "failed" : o.Winner switch { 0 => "robot", 1 => "opponent", _ => "none" };
        string cause = SafeCell.Of(words.Cause(o).Replace('"', '\''));
        return string.Create(CultureInfo.InvariantCulture, $"{o.Number},{winner},{(o.HasFailed ? "" : o.Ending.ToString().ToLowerInvariant())},{o.GroundGained:R},{o.EndTime:R},{Limit(o.Limit)},{Limit(o.OpponentLimit)},\"{cause}\"");

        string Limit(BindingKind limit) => o.HasFailed ? "" : words.Key(limit);
    }

    private static string Line(int contest, MatchEnd o, IMatchWords words) => string.Create(CultureInfo.InvariantCulture, $"{contest},{Line(o, words)}");

    private static void WriteSeconds(TextWriter writer, double seconds)
    {
        if (seconds > 0.0)
        {
            writer.WriteLine(SecondsMark + seconds.ToString("R", CultureInfo.InvariantCulture));
        }
    }

    private static MatchEnd? Row(string line, IMatchWords words)
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
        return Enum.TryParse(cells[2], ignoreCase: true, out ShoveEnding ending) && words.Parse(cells[5]) is BindingKind own && words.Parse(cells[6]) is BindingKind other
            ? new MatchEnd(number, winner, ending, ground, end, own, other) : null;
    }
}
