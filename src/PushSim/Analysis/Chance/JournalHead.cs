using PushSim.Simulation;

namespace PushSim.Analysis.Chance;

/// <summary>First line of a journal: what must agree for finished matches to belong to a campaign. The count of matches is not among it, so that a campaign can grow.</summary>
/// <param name="Command">The work whose matches they are.</param>
/// <param name="Campaign">Of the files, options and contests.</param>
/// <param name="Engine">Of what the engine computes, see <see cref="EngineSelfTest"/>.</param>
/// <param name="Precision">Number type of the equations.</param>
/// <param name="Seed">The seed.</param>
/// <param name="Part">Which numbers.</param>
public sealed record JournalHead(string Command, string Campaign, string Engine, Precision Precision, ulong Seed, PartNumbers Part)
{
    /// <summary>Number of the format [1].</summary>
    public const int Format = 4;

    private const string Start = "# finished matches ";

    // in the order of the fields
    private static readonly JournalMisfit[] s_misfits = [JournalMisfit.Command, JournalMisfit.Seed, JournalMisfit.Part, JournalMisfit.Precision, JournalMisfit.Draws, JournalMisfit.Engine, JournalMisfit.Campaign];

    /// <summary>The line.</summary>
    public string Text => $"{Start}{Format} of {string.Join("; ", Fields)}";

    /// <summary>Name under which the part is kept.</summary>
    public string Name => NameOf(Part);

    private string[] Fields =>
    [
        Command, string.Create(CultureInfo.InvariantCulture, $"seed {Seed}"), string.Create(CultureInfo.InvariantCulture, $"part {Part.Part} of {Part.Parts}"), "precision " + (Precision == Precision.Single ? "single" : "double"),
        string.Create(CultureInfo.InvariantCulture, $"draws {DrawnQuantity.Scheme}"), "engine " + Engine, "campaign " + Campaign,
    ];

    /// <summary>Name of a part.</summary>
    public static string NameOf(PartNumbers part) => string.Create(CultureInfo.InvariantCulture, $"part-{part.Part}-of-{part.Parts}.csv");

    /// <summary>The count of parts that a <see cref="Name"/> tells; 0 if it is no such name [1].</summary>
    public static int PartsOf(string name) =>
        name.EndsWith(".csv", StringComparison.Ordinal) && name[..^4].Split('-') is ["part", string part, "of", string parts]
        && int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out int k) && int.TryParse(parts, NumberStyles.None, CultureInfo.InvariantCulture, out int n) && k >= 1 && k <= n ? n : 0;

    /// <summary>Why a journal with this first line is not of this campaign.</summary>
    /// <param name="line">The line.</param>
    public JournalMisfit Misfit(string line)
    {
        if (line == Text)
        {
            return JournalMisfit.None;
        }

        string[] parts = line.StartsWith(Start, StringComparison.Ordinal) ? line[Start.Length..].Split(" of ", 2) : [];
        if (parts.Length < 2)
        {
            return JournalMisfit.NoJournal;
        }

        if (parts[0] != Format.ToString(CultureInfo.InvariantCulture))
        {
            return JournalMisfit.Format;
        }

        string[] found = parts[1].Split("; ");
        string[] own = Fields;
        int differs = Enumerable.Range(0, Math.Min(found.Length, own.Length)).FirstOrDefault(i => found[i] != own[i], -1);
        return differs < 0 ? JournalMisfit.FirstLine : s_misfits[differs];
    }
}
