using PushSim.Analysis.Compare;
using PushSim.Words.Fits;

namespace PushSim.Cli.Compare;

/// <summary>A log beside its run.</summary>
/// <param name="Log">The log, begun at 0.</param>
/// <param name="Read">The scenario as it was read for the run.</param>
/// <param name="Run">The run.</param>
/// <param name="Errors">How far off each quantity is.</param>
/// <param name="IsByWheels">Whether the measured wheels were put in.</param>
/// <param name="From">Where counting begins [s].</param>
/// <param name="Identified">Values that were found.</param>
/// <param name="Runs">Runs that this took [1].</param>
/// <param name="Notes">What was guessed or left out.</param>
internal sealed record CompareResult(
    ChannelLog Log, ReadResult Read, RunResult Run, IReadOnlyList<ChannelError> Errors, bool IsByWheels, double From, IReadOnlyList<IdentifiedValue> Identified, int Runs, IReadOnlyList<string> Notes)
{
    /// <summary>The answer in a sentence or two.</summary>
    public string Verdict => CompareWords.Verdict(Run.Scenario.Robot.Name, Errors, IsByWheels, From, Run.Time[^1], [.. Identified.Select(i => (i.Key, i.Text))]);

    /// <summary>The same as a card.</summary>
    public AnswerCard Card => CompareCard.Of(Run.Scenario.Robot.Name, Errors, IsByWheels, From, Run.Time[^1], [.. Identified.Select(i => (i.Key, i.Text))]);

    /// <summary>What to know before believing it.</summary>
    public IReadOnlyList<string> Warnings =>
    [
        .. RunWords.Warnings(Run), .. Run.Stop is { } stop ? [RunWords.Cause(stop)] : Array.Empty<string>(),
        .. Identified.Where(i => i.IsAtBound).Select(i => $"{i.Key} ran to the end of what is searched, a factor of ten; the log does not tell it"),
    ];
}
