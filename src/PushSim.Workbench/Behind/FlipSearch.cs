namespace PushSim.Workbench.Behind;

/// <summary>Finds closer where the winner changes, all strips side by side: a whole row of lanes between two places at once.</summary>
internal static class FlipSearch
{
    // Values between two places in each round; two rounds make a place 1/64 as wide [1].
    private const int Between = 7;
    private const int Rounds = 2;

    // More changes than these are no edge but a boundary as fine as dust [1].
    private const int MostFlips = 4;

    /// <summary>Narrows the flips of the strips.</summary>
    public static void Narrow(IReadOnlyList<StripState> strips, StripScene scene, ScenarioSettings middle, LaneRuns lanes, CancellationToken cancel)
    {
        Edge[] edges =
        [
            .. strips.Where(s => s.Flips.Count <= MostFlips && s.Row.Definition.Kind != Scenarios.Keys.KeyKind.Whole)
                .SelectMany(s => s.Pairs().Select((p, k) => new Edge(s, k, s.Places[p], s.Places[p + 1], s.Outcomes[p].Winner, s.Outcomes[p + 1].Winner))),
        ];
        for (int round = 0; round < Rounds && edges.Length > 0; round++)
        {
            int[][] winners = [.. edges.Select(_ => new int[Between])];
            lanes.Run(edges.Length * Between, n => scene.At(edges[n / Between].Strip.Row, edges[n / Between].At((1.0 + (n % Between)) / (1 + Between))), middle, (n, o) => winners[n / Between][n % Between] = o.Winner, cancel);
            for (int e = 0; e < edges.Length; e++)
            {
                // the first that is no longer as below
                int at = Array.FindIndex(winners[e], w => w != edges[e].Below);
                at = at < 0 ? Between : at;
                edges[e] = edges[e] with { From = edges[e].At((double)at / (1 + Between)), To = edges[e].At((at + 1.0) / (1 + Between)) };
            }
        }

        foreach (Edge edge in edges)
        {
            edge.Strip.Flips[edge.Flip] = (edge.Strip.Middle(edge.From, edge.To), edge.Below, edge.Above);
        }
    }

    private sealed record Edge(StripState Strip, int Flip, double From, double To, int Below, int Above)
    {
        public double At(double share) => Strip.Row.Between(From, To, share);
    }
}
