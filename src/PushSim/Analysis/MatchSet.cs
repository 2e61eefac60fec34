using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>A few matches, each with its share of the work. Where the kernels are compiled before the program starts they share lanes; under the JIT they are done one at a time before lanes would be
/// compiled. The outcomes are the same to the bit.</summary>
internal static class MatchSet
{
    /// <summary>One outcome for each match, in their order.</summary>
    /// <param name="matches">The matches, all of one precision.</param>
    /// <param name="work">The work for all of them.</param>
    /// <exception cref="OutOfWorkException">A match needed more than its share.</exception>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static MatchOutcome[] Play(IReadOnlyList<ScenarioSettings> matches, WorkBudget work) => Play(matches, work, Kernel.IsCompiledAhead);

    /// <summary>The same in lanes or alone, as the caller wants it.</summary>
    internal static MatchOutcome[] Play(IReadOnlyList<ScenarioSettings> matches, WorkBudget work, bool inLanes)
    {
        Precision precision = matches.Count == 0 ? Precision.Double : matches[0].Numerics.Precision;
        int lanes = MatchBatch.BestLanes(precision);
        return inLanes && lanes > 1 && matches.Count > 1 ? InLanes(matches, work, lanes, precision) : SideBySide.Do(matches, (m, part) => MatchBatch.RunAlone(0, m, part), work);
    }

    private static MatchOutcome[] InLanes(IReadOnlyList<ScenarioSettings> matches, WorkBudget work, int lanes, Precision precision)
    {
        WorkBudget[] parts = [.. matches.Select(_ => work.Part(1.0 / matches.Count))];
        var outcomes = new MatchOutcome[matches.Count];
        int cut = 0;
        void Take(in MatchOutcome outcome)
        {
            int i = (int)outcome.Number;
            MatchOutcome own = outcome;
            outcomes[i] = own with { Number = 0 };
            cut += WorkBudget.Try(() => parts[i].Spend(own.Report, Simulator.MaximumEvaluations(matches[i]))) ? 0 : 1;
        }

        int threads = Math.Min(Environment.ProcessorCount, (matches.Count + lanes - 1) / lanes);
        new MatchBatch(threads, lanes, precision).RunWithin(0, matches.Count, number => matches[(int)number], number => parts[number].Left, Take, work.Cancel);
        return cut == 0 ? outcomes : throw new OutOfWorkException();
    }
}
