namespace PushSim.Analysis.Chance;

/// <summary>Why a line of a journal is refused.</summary>
public enum JournalFault
{
    /// <summary>It is no row of a match.</summary>
    NoRow,

    /// <summary>Ground or end is no finite number.</summary>
    NotFinite,

    /// <summary>It does not fit its checksum.</summary>
    Checksum,

    /// <summary>It is of another scenario, seed or label.</summary>
    Contest,

    /// <summary>The match is not of the part; its number is told.</summary>
    Part,

    /// <summary>The match has another result in an earlier line; its number and that line are told.</summary>
    Contradiction,

    /// <summary>So many matches stand there twice that they are not compared.</summary>
    TooManyTwice,

    /// <summary>The second line does not name the columns.</summary>
    Columns,

    /// <summary>A line that should close rows cannot be read.</summary>
    Closing,

    /// <summary>A line closes another count of rows than there are; both are told.</summary>
    ClosedRows,

    /// <summary>The lines above are not those that were closed.</summary>
    ClosedLines,
}
