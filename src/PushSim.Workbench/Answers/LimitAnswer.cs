using PushSim.Analysis.Limits;
using PushSim.Words.Limits;
using PushSim.Words.Tables;

namespace PushSim.Workbench.Answers;

/// <summary>The answer of a robot alone: what it can do by its limits, as the command `limits` tells it.</summary>
internal static class LimitAnswer
{
    /// <summary>The limits of a robot that stands.</summary>
    /// <param name="robot">The robot.</param>
    /// <returns>Null if it cannot stand or drive at all.</returns>
    public static LimitResult? Of(RobotSettings robot)
    {
        try
        {
            return LimitFinder.Find(LimitFinder.Standing(robot, robot.Name));
        }
        catch (SimulationException)
        {
            return null;
        }
    }

    /// <summary>Its steady pull alone [N]; null if it has none.</summary>
    public static double? Pull(RobotSettings robot)
    {
        try
        {
            return LimitFinder.Pull(LimitFinder.Standing(robot, robot.Name), new LimitCondition())?.Force;
        }
        catch (SimulationException)
        {
            return null;
        }
    }

    /// <summary>The message.</summary>
    public static AnswerMessage Message(LimitResult report, LimitResult? before)
    {
        AnswerCard card = LimitCard.Of(report);
        AnswerCard? old = before is null ? null : LimitCard.Of(before);
        return AnswerMaker.OfCard(card, old) with { Whole = true };
    }
}
