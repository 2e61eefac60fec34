namespace PushSim.Runs;

/// <summary>What one thread of a batch does.</summary>
internal interface IMatchWorker
{
    /// <summary>Plays matches until the queue is empty.</summary>
    void Run(IMatchQueue queue, CancellationToken cancel);
}
