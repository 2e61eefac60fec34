using PushSim.Analysis.Chance;

namespace PushSim.Words.Matches;

/// <summary>What is said of journals of matches.</summary>
public static class JournalWords
{
    /// <summary>A refused line: file, line and reason.</summary>
    public static string Of(JournalProblem p) => Text($"{p.File}:{p.Line}: {Reason(p)}");

    /// <summary>Why a journal is of something else; empty if it is not.</summary>
    public static string Of(JournalMisfit misfit) => misfit switch
    {
        JournalMisfit.None => "",
        JournalMisfit.NoJournal => "it does not begin like a journal of matches",
        JournalMisfit.Format => Text($"it is of another format than {JournalHead.Format}, which this version reads"),
        JournalMisfit.FirstLine => "its first line is damaged",
        JournalMisfit.Command => "it is of another command",
        JournalMisfit.Seed => "it is of another seed",
        JournalMisfit.Part => "it is of another part",
        JournalMisfit.Precision => "it is of another precision",
        JournalMisfit.Draws => "it is of another scheme of draws",
        JournalMisfit.Engine => "it is of an engine with other results",
        _ => "it is of other files, options or contests",
    };

    private static string Reason(JournalProblem p) => p.Fault switch
    {
        JournalFault.NotFinite => "ground and end of a match are finite numbers",
        JournalFault.Checksum => "the row does not fit its checksum: it was changed or damaged",
        JournalFault.Contest => "the row is of another contest: another scenario, seed or label",
        JournalFault.Part => Text($"match {p.Number} is not of this part"),
        JournalFault.Contradiction => Text($"match {p.Number} has another result than in line {p.Other}"),
        JournalFault.TooManyTwice => "too many matches stand here twice",
        JournalFault.Columns => "these are not the columns of a journal",
        JournalFault.Closing => "this line should close the rows above it",
        JournalFault.ClosedRows => Text($"this line closes {p.Number} rows, and there are {p.Other}"),
        JournalFault.ClosedLines => "the lines above are not those that this line closed",
        _ => "this is no row of a match",
    };
}
