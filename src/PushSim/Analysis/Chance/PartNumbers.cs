namespace PushSim.Analysis.Chance;

/// <summary>The numbers of one part of a campaign: every N-th, from its own first. A campaign that grows adds numbers to each part and takes none away, so that what a part has played stays its own.</summary>
/// <param name="Part">Which part, from 1 [1].</param>
/// <param name="Parts">Count of parts [1].</param>
public readonly record struct PartNumbers(int Part, int Parts)
{
    /// <summary>All numbers in one part.</summary>
    public static PartNumbers Whole => new(1, 1);

    /// <summary>How many of the first matches are its own [1].</summary>
    /// <param name="matches">Matches of the campaign [1].</param>
    public long Count(long matches) => matches < Part ? 0 : ((matches - Part) / Parts) + 1;

    /// <summary>The number at a place of the part [1].</summary>
    /// <param name="place">The place, from 0 [1].</param>
    public long NumberAt(long place) => Part - 1 + (place * Parts);

    /// <summary>Whether a number is its own.</summary>
    /// <param name="number">Number of a match, from 0 [1].</param>
    public bool Holds(long number) => number >= 0 && number % Parts == Part - 1;

    /// <summary>The place of one of its numbers, from 0 [1].</summary>
    /// <param name="number">Number of a match [1].</param>
    public long PlaceOf(long number) => number / Parts;
}
