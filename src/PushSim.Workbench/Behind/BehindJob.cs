using PushSim.Scenarios.Editing;
using PushSim.Workbench.Designs;

namespace PushSim.Workbench.Behind;

/// <summary>What is to be done behind an answer, for one design. Never changes.</summary>
/// <param name="Number">The answer's number.</param>
/// <param name="Since">Time stamp of the change.</param>
/// <param name="Design">The files.</param>
/// <param name="Read">What was read of them.</param>
/// <param name="Rows">Their values.</param>
internal sealed record BehindJob(long Number, long Since, Design Design, ReadResult Read, IReadOnlyList<EditRow> Rows)
{
    /// <summary>Keys of the values whose strips are asked for, the first first.</summary>
    public IReadOnlyList<string> Keys { get; init; } = [];

    /// <summary>Whether shares of drawn matches are asked for.</summary>
    public bool IsOdds { get; init; }

    /// <summary>Takes the keys in the order of what matters most; null: nobody asks.</summary>
    public Action<IReadOnlyList<string>>? Ordered { get; init; }

    /// <summary>The run of the answer; null where the strips alone are asked for.</summary>
    public RunResult? Run { get; init; }

    /// <summary>The design to compare with; null: none.</summary>
    public Design? Before { get; init; }

    /// <summary>Its run; null: none.</summary>
    public RunResult? BeforeRun { get; init; }

    /// <summary>The value that a row had before, by key.</summary>
    public IReadOnlyDictionary<string, double> BeforeValues { get; init; } = new Dictionary<string, double>();
}
