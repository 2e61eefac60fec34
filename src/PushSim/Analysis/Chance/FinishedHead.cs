namespace PushSim.Analysis.Chance;

/// <summary>What must agree for two lists of finished matches to belong together.</summary>
/// <param name="Command">The work whose matches they are.</param>
/// <param name="Fingerprint">Of the files that were read and of all that is drawn.</param>
/// <param name="Seed">The seed.</param>
/// <param name="Matches">Matches of each contest, all parts together [1].</param>
/// <param name="Part">Which part, from 1 [1].</param>
/// <param name="Parts">Count of parts [1].</param>
public sealed record FinishedHead(string Command, string Fingerprint, ulong Seed, long Matches, int Part, int Parts)
{
    /// <summary>Its line.</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"# finished matches 3 of {Command}; fingerprint {Fingerprint}; seed {Seed}; matches {Matches}; part {Part} of {Parts}");

    /// <summary>Name under which the part is kept.</summary>
    public string Name => string.Create(CultureInfo.InvariantCulture, $"part-{Part}-of-{Parts}.csv");

    /// <summary>The count of parts that a <see cref="Name"/> tells; 0 if it is no such name [1].</summary>
    public static int PartsOf(string name) =>
        name.EndsWith(".csv", StringComparison.Ordinal) && name[..^4].Split('-') is ["part", _, "of", string parts] && int.TryParse(parts, NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 0;
}
