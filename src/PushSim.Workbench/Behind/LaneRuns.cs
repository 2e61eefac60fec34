namespace PushSim.Workbench.Behind;

/// <summary>Plays matches in lanes, with workers that are kept.</summary>
internal sealed class LaneRuns
{
    private readonly Dictionary<Precision, MatchBatch> _batches = [];

    /// <summary>Plays them all.</summary>
    /// <param name="count">How many [1].</param>
    /// <param name="match">A match by its place; null if its values contradict each other: then its outcome is a failure.</param>
    /// <param name="middle">What the lanes get in the place of such a match.</param>
    /// <param name="finished">Takes each outcome, one at a time.</param>
    /// <param name="cancel">Ends it.</param>
    public void Run(int count, Func<int, ScenarioSettings?> match, ScenarioSettings middle, Action<int, MatchOutcome> finished, CancellationToken cancel)
    {
        ScenarioSettings instead = middle with { Numerics = middle.Numerics.ForDraws() };
        if (!_batches.TryGetValue(instead.Numerics.Precision, out MatchBatch? batch))
        {
            batch = new MatchBatch(0, 0, instead.Numerics.Precision);
            _batches.Add(instead.Numerics.Precision, batch);
        }

        bool[] isWrong = new bool[count];
        batch.Run(0, count, n =>
        {
            ScenarioSettings? settings = match((int)n);
            isWrong[n] = settings is null;
            return settings ?? instead;
        }, (in MatchOutcome o) => finished((int)o.Number, isWrong[o.Number] ? o with { Status = RunStatus.Failed, Winner = -1 } : o), cancel);
    }
}
