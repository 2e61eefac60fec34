namespace PushSim.Runs;

/// <summary>Where lanes take matches from and put outcomes.</summary>
internal interface IMatchQueue
{
    /// <summary>Prepares the next match; false if there is none.</summary>
    bool TryTake(PreparedMatch match);

    /// <summary>Takes an outcome.</summary>
    void Done(in MatchOutcome outcome);
}
