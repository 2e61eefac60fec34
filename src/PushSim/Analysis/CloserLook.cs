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
        RunResult looked = TurnReview.IsAsked(result) ? Turn(result, work, leftOut) : Other(result, work.Part(result.Scenario.Opponent is null ? 1.0 : ShareOfShoves), leftOut);
        if (!WorkBudget.Try(() => looked = CoastingReview.Review(looked, work.Part(result.Scenario.Opponent is null ? ShareOfCoasting : ShareOfCoasting * ShareOfShoves))))
        {
            leftOut.Add(LookPart.Coasting);
        }

        if (drawn is not null && looked.Shove is not null && !WorkBudget.Try(() => looked = looked with { Drawn = DrawnReview.Of(drawn, work.Part(ShareOfShoves)) }))
        {
            leftOut.Add(LookPart.Drawn);
        }

        return looked with { Look = new CloserLookReport(work.Done - before, work.IsEndless ? null : work.Allowed, leftOut) };
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

    private static RunResult Other(RunResult result, WorkBudget work, List<LookPart> leftOut)
    {
        RunResult looked = result;
        if (result.Shove is not null)
        {
            (LookPart Part, Action<WorkBudget> Do)[] parts =
            [
                (LookPart.CloseCall, part => looked = CloseCall.Review(looked, part)),
                (LookPart.Bump, part => looked = looked with { Bump = BumpReview.Of(looked, part) }),
                (LookPart.Starts, part => looked = looked with { Start = StartReview.Of(looked.Scenario, part) }),
            ];
            leftOut.AddRange(parts.Where(p => !WorkBudget.Try(() => p.Do(work.Part(1.0 / parts.Length)))).Select(p => p.Part));
        }

        looked = result.Shove is null ? looked : looked with { Throttles = BestThrottleFinder.OfBoth(looked.Scenario) };
        looked = looked with { Chatter = ChatterReview.Of(looked, work) };
        if (looked.Chatter.IsCureLeftOut)
        {
            leftOut.Add(LookPart.Cure);
        }

        return looked;
    }
}
