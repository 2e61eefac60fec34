namespace PushSim.Analysis.Chance;

/// <summary>Why a journal is not of a campaign.</summary>
public enum JournalMisfit
{
    /// <summary>It is.</summary>
    None,

    /// <summary>It does not begin like a journal.</summary>
    NoJournal,

    /// <summary>It is of another format.</summary>
    Format,

    /// <summary>Its first line is damaged.</summary>
    FirstLine,

    /// <summary>It is of another command.</summary>
    Command,

    /// <summary>It is of another seed.</summary>
    Seed,

    /// <summary>It is of another part.</summary>
    Part,

    /// <summary>It was played in another precision.</summary>
    Precision,

    /// <summary>It was drawn by another scheme.</summary>
    Draws,

    /// <summary>It was played by an engine with other results.</summary>
    Engine,

    /// <summary>It is of other files, options or contests.</summary>
    Campaign,
}
