namespace PushSim.Analysis.Chance;

/// <summary>What settles the draws of a contest: a match is told by this and its number, so that the same match can be run again by whatever draws it.</summary>
/// <param name="Seed">The seed.</param>
/// <param name="Label">Names the contest; those with the same label share their draws.</param>
public readonly record struct ContestKey(ulong Seed, string Label)
{
    /// <summary>The seed of the contest's own draws.</summary>
    public ulong Draws => Seed ^ Philox.NumberOf(Label);

    /// <summary>The label of two robots' contest.</summary>
    /// <param name="first">Name of the first.</param>
    /// <param name="second">Name of the second.</param>
    public static string Of(string first, string second) => $"{first}/{second}";
}
