namespace PushSim.Runs;

/// <summary>How a shove ended.</summary>
public enum ShoveEnding
{
    /// <summary>A robot was pushed over a line.</summary>
    Line,

    /// <summary>Time ran out, and one robot had gained ground.</summary>
    Ground,

    /// <summary>Time ran out, and neither had gained ground.</summary>
    Stalemate,

    /// <summary>A robot tipped or lost the floor.</summary>
    Tips,
}
