namespace PushSim.Analysis.Chance;

/// <summary>The matches of one contest as a table of their own.</summary>
public static class MatchTable
{
    /// <summary>Columns of a match.</summary>
    public const string Columns = MatchRow.Columns;

    /// <summary>Writes it.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="fingerprint">Of the files that were read and of all that is drawn.</param>
    /// <param name="plan">What was asked.</param>
    /// <param name="words">Keys and words.</param>
    /// <param name="ends">The matches.</param>
    public static void Write(TextWriter writer, string fingerprint, MatchPlan plan, IMatchWords words, IEnumerable<MatchEnd> ends)
    {
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"# matches; fingerprint {fingerprint}; seed {plan.Seed}; asked {plan.Matches}"));
        writer.WriteLine(Columns);
        foreach (MatchEnd outcome in ends)
        {
            writer.WriteLine(MatchRow.Text(outcome, words));
        }
    }
}
