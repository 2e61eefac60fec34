namespace PushSim.Words.Terms;

/// <summary>A verdict of several clauses taken apart: the first is the answer, the others tell why.</summary>
public static class Clauses
{
    private const string Between = "; ";

    /// <summary>The first clause as a sentence.</summary>
    /// <param name="verdict">Clauses with semicolons between them; further sentences may follow.</param>
    public static string First(string verdict)
    {
        int end = verdict.IndexOf(Between, StringComparison.Ordinal);
        return end < 0 ? verdict : verdict[..end] + ".";
    }

    /// <summary>The other clauses, a sentence each.</summary>
    /// <param name="verdict">Clauses with semicolons between them; further sentences may follow.</param>
    public static string Rest(string verdict)
    {
        int end = verdict.IndexOf(Between, StringComparison.Ordinal);
        return end < 0 ? "" : string.Join(". ", verdict[(end + Between.Length)..].Split(Between).Select(Phrase.Capital));
    }

    /// <summary>A clause as it begins a sentence; empty for none.</summary>
    public static string Sentence(string clause) => clause.Length == 0 ? "" : Phrase.Capital(clause);
}
