using PushSim.Files;
using PushSim.Scenarios.Bench;
using PushSim.Scenarios.Notebook;
using PushSim.Scenarios.Studies;
using PushSim.Words.Fits;
using PushSim.Words.Tables;
using PushSim.Words.Terms;
using PushSim.Workbench.Designs;

namespace PushSim.Workbench.Bench;

/// <summary>The notebook of the garage in whose folder the workbench was started.</summary>
/// <param name="folder">The folder.</param>
/// <param name="chosen">The garage that was named; null: the nearest one upwards.</param>
internal sealed class GarageBook(string folder, string? chosen)
{
    // A page waits no longer for another program to leave the notebook [s].
    private const double Patience = 5.0;

    /// <summary>What stands against noting anything without a garage.</summary>
    public static Problem NoGarage { get; } = new("", 0, 0, Severity.Error, "no garage here, so there is no notebook", "pushsim garage new makes one");

    /// <summary>The notebook, there or not; null without a garage.</summary>
    public string? File => NotebookReader.FileOf(chosen is null ? GarageFolder.Above(folder) : GarageFolder.Of(chosen));

    private static LockAsk Ask => new("the notebook", "pushsim open", _ => { }, CancellationToken.None) { Wait = Patience };

    /// <summary>What stands in it.</summary>
    public ReadingsReply Read()
    {
        if (File is not string file)
        {
            return new ReadingsReply(null, [], []);
        }

        if (Disk.Look(file) == FileKind.None)
        {
            return new ReadingsReply(file, [], []);
        }

        NotebookResult read = NotebookReader.Read(file);
        return new ReadingsReply(file, [.. read.Rows.Select(Row)], [.. read.Problems.Select(p => $"{(p.Line > 0 ? FormattableString.Invariant($"Line {p.Line}: ") : "")}{p.Message}; {p.Help}."), .. read.Notes]) { Season = Season(read) };
    }

    // as `fit` of the notebook tells it
    private static SeasonMessage? Season(NotebookResult read)
    {
        var study = SeasonStudy.Of(read);
        if (study.First is not { } fit)
        {
            return null;
        }

        AnswerCard card = SeasonWords.Of(fit, study.Sliding is not null, study.RobotChanges);
        return new SeasonMessage(card.Answer, card.Facts, Clauses.Sentence(card.Sure), Clauses.Sentence(card.Next), [.. card.Numbers.Select(n => new SeasonRow(n.Label, n.Value, n.Beside, n.Note))]);
    }

    /// <summary>Adds pulls that a person typed: all of them, or none if one cannot be read. Throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/> where the disk refuses.</summary>
    /// <param name="asked">Their lines, or the parts of one.</param>
    /// <param name="added">Pulls that are on the disk [1].</param>
    /// <returns>What stands against them; null: nothing does.</returns>
    public Problem? Add(ReadingRequest asked, out int added)
    {
        added = 0;
        DateTime now = WallClock.Now;
        Problem? wrong;
        IReadOnlyList<PullRow> rows = asked.Text is { } text ? HandPulls.Parse(text, now, out wrong)
            : HandPulls.Of(asked.Tyre ?? "", asked.Load ?? "", asked.Peak ?? "", asked.Sliding ?? "", asked.Note ?? "", now, out wrong) is { } one ? [one] : [];
        if (wrong is not null || File is not string file)
        {
            return wrong ?? NoGarage;
        }

        foreach (PullRow row in rows)
        {
            if (NotebookWriter.Append(file, row, Ask).FirstOrDefault() is { } problem)
            {
                return problem;
            }

            added++;
        }

        return null;
    }

    /// <summary>Where the pulls of a tyre go; null without a tyre or a garage.</summary>
    /// <param name="asked">Tyre, floor and its state.</param>
    /// <param name="design">The open files, whose robot is pulled; null: none.</param>
    /// <param name="log">The raw log; empty: none.</param>
    public PullNotes? NotesOf(PortRequest asked, Design? design, string log)
    {
        if (asked.Tyre?.Trim() is not { Length: > 0 } tyre || File is not string file)
        {
            return null;
        }

        ReadResult? read = design?.Read();
        return new PullNotes(file, new PullRow { Tyre = tyre, Robot = Path.GetFileName(read is null ? null : design!.Robot("robot", read)) ?? "", Floor = asked.Floor?.Trim() ?? "", State = FloorState.Of(asked.State?.Trim() ?? "") }, read?.Robot ?? read?.Scenario?.Robot, log, Ask);
    }

    private static ReadingRow Row(PullRow r) => new(
        r.Line, r.When?.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) ?? "", r.Tyre, r.Robot, r.Floor, Scale(r.Load), Newton(r.Peak), Newton(r.Sliding), r.Source, r.Note, !r.IsCounted, r.LeftOut);

    private static string Scale(double? force) => force is double f ? ForceWords.Scale(f) : "";

    private static string Newton(double? force) => force is double f ? ForceWords.Both(f) : "";
}
