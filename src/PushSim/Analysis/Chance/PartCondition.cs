namespace PushSim.Analysis.Chance;

/// <summary>What a part of a campaign is good for.</summary>
public enum PartCondition
{
    /// <summary>All of its matches are there.</summary>
    Whole,

    /// <summary>Matches are lacking, and somebody is playing them.</summary>
    Running,

    /// <summary>Matches are lacking; the same command goes on.</summary>
    Unfinished,

    /// <summary>There is no journal.</summary>
    Missing,

    /// <summary>The journal is of something else.</summary>
    Foreign,

    /// <summary>Lines of the journal are refused.</summary>
    Damaged,
}
