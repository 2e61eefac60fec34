namespace PushSim.Analysis.Ladder;

/// <summary>Cycles among pairs: no ranking can show them.</summary>
public static class Cycles
{
    /// <summary>Every cycle of three, sure ones first.</summary>
    /// <param name="robots">Count of robots [1].</param>
    /// <param name="pairs">Matches.</param>
    public static IReadOnlyList<Cycle> Find(int robots, IReadOnlyList<PairRecord> pairs)
    {
        int[,] beats = new int[robots, robots];
        foreach (PairRecord p in pairs)
        {
            int lead = Math.Sign(p.Wins - p.Losses);
            Chance.Bounds interval = Chance.ShareInterval.Difference(p.AsFreeDraws.Wins, p.AsFreeDraws.Losses, p.AsFreeDraws.Matches);
            int weight = interval.Holds(0.0) ? 1 : 2;
            beats[p.First, p.Second] = lead * weight;
            beats[p.Second, p.First] = -lead * weight;
        }

        List<Cycle> found = [];
        for (int a = 0; a < robots; a++)
        {
            for (int b = 0; b < robots; b++)
            {
                for (int c = 0; c < robots; c++)
                {
                    // told once, from its first robot
                    if (a < b && a < c && b != c && beats[a, b] > 0 && beats[b, c] > 0 && beats[c, a] > 0)
                    {
                        found.Add(new Cycle(a, b, c, Math.Min(beats[a, b], Math.Min(beats[b, c], beats[c, a])) == 2));
                    }
                }
            }
        }

        return [.. found.OrderByDescending(c => c.IsSure)];
    }
}
