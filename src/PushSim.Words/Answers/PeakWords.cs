namespace PushSim.Words.Answers;

/// <summary>Words of peaks: which part, when, and what it is held to.</summary>
public static class PeakWords
{
    /// <summary>What stands beside a peak: "in front left 1 at 0.330 s, limit 14.0 A".</summary>
    /// <param name="answer">The answer whose peak it is.</param>
    /// <param name="robot">The robot.</param>
    /// <param name="answers">Its answers.</param>
    /// <returns>Empty where there is no peak.</returns>
    public static string Beside(Answer answer, RobotSettings robot, RunAnswers answers) =>
        answer.PeakOf?.Invoke(answers) is Peak peak
            ? Part(answer.Key, robot, peak.Index) + FormattableString.Invariant($"at {peak.Time:0.000} s") + (peak.Limit is double limit ? $", limit {answer.Shown(limit)} {answer.Unit}" : "")
            : "";

    /// <summary>All peaks of a robot in one sentence; empty without any.</summary>
    /// <param name="robot">The robot.</param>
    /// <param name="answers">Its answers.</param>
    public static string Sentence(RobotSettings robot, RunAnswers answers)
    {
        string[] parts = [.. AnswerCatalogue.All
            .Where(a => a.PeakOf?.Invoke(answers) is not null)
            .Select(a => $"{a.Words} {a.Shown(a.PeakOf!(answers)!.Value.Value)} {a.Unit} {Beside(a, robot, answers)}")];
        return parts.Length == 0 ? "" : $"{robot.Name}: {string.Join("; ", parts)}.";
    }

    private static string Part(string key, RobotSettings robot, int index) => key switch
    {
        "peak_motor_current_a" when Motor(robot, index) is string motor => $"in {motor} ",
        "peak_wheel_load_n" when index < robot.Wheels.Count => $"on {robot.Wheels[index].Name} ",
        _ => "",
    };

    // motors stand in the order of the controllers
    private static string? Motor(RobotSettings robot, int index) =>
        robot.Controllers.SelectMany(c => c.Motors).Select(m => $"{robot.Drives[m.Drive].Name} {m.Motor + 1}").ElementAtOrDefault(index);
}
