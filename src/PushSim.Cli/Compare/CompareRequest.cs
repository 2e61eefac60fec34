namespace PushSim.Cli.Compare;

/// <summary>What is asked of `compare`.</summary>
/// <param name="Log">The log's file.</param>
/// <param name="File">The scenario file.</param>
/// <param name="Identify">Keys of values to be found.</param>
/// <param name="First">Share of the log on which they are found [1].</param>
/// <param name="From">Time of the log at which it begins; null: its first row [s].</param>
/// <param name="To">Time at which it ends; null: its last row [s].</param>
/// <param name="Replay">"commands" or "wheels"; null: commands if it has them.</param>
/// <param name="Read">How the scenario is read.</param>
/// <param name="Output">What is written where.</param>
internal sealed record CompareRequest(string Log, string File, IReadOnlyList<string> Identify, double First, double? From, double? To, string? Replay, ReadOptions Read, OutputRequest Output)
{
    /// <summary>Rows a second of a log without times [1/s]; null: not known.</summary>
    public double? Rate { get; init; }
}
