namespace PushSim.Scenarios.Sources;

/// <summary>The known word that a mistyped one most likely meant: edit distance with swaps of neighbours counted once.</summary>
public static class NearestWord
{
    // Longer words are no typing mistakes of ours; the cap bounds the work on hostile files.
    private const int LongestWord = 64;

    /// <summary>The nearest candidate within a third of its letters, at least one; null if none is near.</summary>
    public static string? Find(string word, IEnumerable<string> candidates)
    {
        if (word.Length > LongestWord)
        {
            return null;
        }

        string? best = null;
        int least = int.MaxValue;
        foreach (string candidate in candidates)
        {
            int distance = Distance(word, candidate);
            if (distance <= Math.Max(1, candidate.Length / 3) && distance < least)
            {
                (best, least) = (candidate, distance);
            }
        }

        return best;
    }

    /// <summary>"did you mean ...? " with the nearest candidate, to stand before other advice; empty if none is near.</summary>
    public static string Advice(string word, IEnumerable<string> candidates) => Find(word, candidates) is string near ? $"did you mean \"{near}\"? " : "";

    /// <summary>Edits from one word to the other: insert, delete, replace, swap neighbours; letter case counts nothing.</summary>
    public static int Distance(string a, string b)
    {
        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            d[i, 0] = i;
        }

        for (int j = 0; j <= b.Length; j++)
        {
            d[0, j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = IsSame(a[i - 1], b[j - 1]) ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + cost);
                if (i > 1 && j > 1 && IsSame(a[i - 1], b[j - 2]) && IsSame(a[i - 2], b[j - 1]))
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }

    private static bool IsSame(char x, char y) => char.ToLowerInvariant(x) == char.ToLowerInvariant(y);
}
