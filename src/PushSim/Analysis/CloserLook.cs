using PushSim.Analysis.Chance;
using PushSim.Analysis.Limits;
using PushSim.Analysis.Turning;
using PushSim.Runs;

namespace PushSim.Analysis;

/// <summary>Looks closer at one finished run: what it would be with controllers that coast between pulses, whether a shove is too close to call and what it owes to who moves first, how freely a turn turns, whether and why tyres chatter. Many runs more,
/// within a limit of work; what would take more is left out and named.</summary>
public static class CloserLook
{
    /// <summary>Evaluations that are usually allowed: every shipped scenario needs less [1].</summary>
    public const long UsualWork = 9_000_000;

    // Two robots and their contact cost about three times as much an evaluation [1].
    private const double ShareOfShoves = 1.0 / 3.0;

    // Of the work on a turn: its steady turn; the rest goes to the parts that follow from it [1].
    private const double ShareOfSwings = 1.0 / 6.0;

    // One run more, beside the other parts [1].
    private const double ShareOfCoasting = 0.2;

    /// <summary>The result looked at.</summary>
    /// <param name="result">The run.</param>
    /// <param name="work">The work for it.</param>
    /// <param name="drawn">Matches of a shove with drawn values; null: it is not looked at.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static RunResult Review(RunResult result, WorkBudget work, IMatchSource? drawn = null)
    {
        long before = work.Done;
        List<LookPart> leftOut = [];
        RunResult looked = TurnReview.IsAsked(result) ? Turn(result, work, leftOut) : Other(result, work, drawn, leftOut);
        if (!WorkBudget.Try(() => looked = CoastingReview.Review(looked, work.Part(result.Scenario.Opponent is null ? ShareOfCoasting : ShareOfCoasting * ShareOfShoves))))
        {
            leftOut.Add(LookPart.Coasting);
        }

        return looked with { Look = new LookCost(work.Done - before, work.IsEndless ? null : work.Allowed, leftOut) };
    }

    private static RunResult Turn(RunResult result, WorkBudget work, List<LookPart> leftOut)
    {
        TurnSwings swings = TurnSwings.LeftOut;
        if (!WorkBudget.Try(() => swings = TurnReview.Steady(result, work.Part(ShareOfSwings))))
        {
            leftOut.Add(LookPart.Modes);
        }

        return TurnReview.Review(result, swings, work.Part(1.0 - ShareOfSwings), leftOut);
    }

    private static RunResult Other(RunResult result, WorkBudget all, IMatchSource? drawn, List<LookPart> leftOut)
    {
        WorkBudget work = all.Part(result.Scenario.Opponent is null ? 1.0 : ShareOfShoves);
        RunResult looked = result.Shove is null ? result : Shove(result, work, drawn, all.Part(ShareOfShoves), leftOut);
        looked = looked with { Chatter = ChatterReview.Of(looked, work) };
        if (looked.Chatter.IsCureLeftOut)
        {
            leftOut.Add(LookPart.Cure);
        }

        return looked;
    }

    // What asks for matches of its own, side by side: none of them fills all lanes.
    private static RunResult Shove(RunResult result, WorkBudget work, IMatchSource? drawn, WorkBudget draws, List<LookPart> leftOut)
    {
        RunResult close = result;
        StartStudy? start = null;
        DrawnSet? set = null;
        Bump? bump = null;
        IReadOnlyList<BestThrottle?> throttles = [];
        WorkBudget[] thirds = [work.Part(1.0 / 3.0), work.Part(1.0 / 3.0), work.Part(1.0 / 3.0)];
        (LookPart Part, Action Do)[] parts =
        [
            (LookPart.CloseCall, () => close = CloseCall.Review(result, thirds[0])),
            (LookPart.Bump, () => bump = BumpReview.Of(result, thirds[1])),
            (LookPart.Starts, () => start = StartReview.Of(result.Scenario, thirds[2])),
            (LookPart.Drawn, () => set = drawn is null ? null : DrawnReview.Of(drawn, draws)),
        ];
        bool[] isDone = new bool[parts.Length];
        try
        {
            // best throttles are no runs: no work is counted for them
            Parallel.Invoke([.. parts.Select((p, i) => (Action)(() => isDone[i] = WorkBudget.Try(p.Do))), () => throttles = BestThrottleFinder.OfBoth(result.Scenario)]);
        }
        catch (AggregateException e) when (e.InnerExceptions.All(x => x is OperationCanceledException))
        {
            throw new OperationCanceledException(work.Cancel);
        }

        leftOut.AddRange(parts.Where((_, i) => !isDone[i]).Select(p => p.Part));
        return close with { Bump = bump, Start = start ?? close.Start, Drawn = set, Throttles = throttles };
    }
}
