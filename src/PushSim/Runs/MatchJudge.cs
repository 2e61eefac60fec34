using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Makes a match's outcome out of what was watched; the rules of <see cref="RunResultMaker"/> and <see cref="ShoveJudge"/>.</summary>
internal static class MatchJudge
{
    public static MatchOutcome Refused(long number) => new() { Number = number, Status = RunStatus.Failed, Failure = MatchFailure.Refused, Winner = -1 };

    public static MatchOutcome Of(long number, ShoveSettings shove, MatchWatch watch, in IntegrationOutcome report)
    {
        MatchFailure failure = Failure(watch, report.Status);
        if (shove.PlaysOn && !double.IsNaN(watch.LineTime))
        {
            return Beyond(number, shove, watch, report, failure);
        }

        var outcome = new MatchOutcome
        {
            Number = number,
            Status = failure != MatchFailure.None ? RunStatus.Failed : watch.HasTipped ? RunStatus.Tips : RunStatus.Finished,
            Failure = failure,
            Winner = -1,
            EndTime = report.Time,
            FirstContact = watch.TouchTime,
            Evaluations = report.Evaluations,
            Steps = report.Steps,
            RejectedSteps = report.Rejected,
        };
        if (failure != MatchFailure.None)
        {
            return outcome;
        }

        (ShoveEnding ending, int winner) = ShoveJudge.Ending(shove, watch);
        return outcome with
        {
            Ending = ending,
            Winner = winner,
            GroundGained = watch.GroundGained,
            EndTime = double.IsNaN(watch.LineTime) ? report.Time : watch.LineTime,
            First = Robot(watch.Robots[0]),
            Opponent = Robot(watch.Robots[1]),
        };
    }

    // up to the line as if that had ended it
    private static MatchOutcome Beyond(long number, ShoveSettings shove, MatchWatch watch, in IntegrationOutcome report, MatchFailure failure) => new()
    {
        Number = number,
        Status = RunStatus.Finished,
        Failure = failure,
        Ending = ShoveEnding.Line,
        Winner = ShoveJudge.AtLine(watch),
        GroundGained = watch.GroundAtLine,
        EndTime = watch.LineTime,
        FirstContact = watch.TouchTime,
        Evaluations = report.Evaluations,
        Steps = report.Steps,
        RejectedSteps = report.Rejected,
        Beyond = new MatchBeyond(failure == MatchFailure.None ? ShoveJudge.Without(shove, watch).Ending : null, watch.GroundGained),
    };

    private static MatchFailure Failure(MatchWatch watch, IntegrationStatus status)
    {
        if (watch.Starved >= 0)
        {
            return MatchFailure.Battery;
        }

        return watch.HasTipped ? MatchFailure.None : status switch
        {
            IntegrationStatus.StepTooSmall or IntegrationStatus.NotFinite => MatchFailure.Step,
            IntegrationStatus.EvaluationCap => MatchFailure.Work,
            _ => MatchFailure.None,
        };
    }

    private static MatchRobot Robot(RobotWatch w) =>
        new(w.Turned, w.PeakBatteryCurrent, w.PeakControllerCurrent, w.LowestVoltage, w.LimitedBy);
}
