using PushSim.Analysis.Fit;

namespace PushSim.Scenarios.Logs;

/// <summary>What is wrong with a log, in words, with the line it shows at.</summary>
public static class TraceWords
{
    /// <summary>The complaint, at the line of the sample, with what <paramref name="advice"/> says about it.</summary>
    public static Problem Of(string file, LogTrace trace, TraceProblem wrong, LogAdvice advice)
    {
        int line = wrong.Sample < trace.Lines.Length ? trace.Lines[wrong.Sample] : 0;
        (string message, string help) = wrong.Fault switch
        {
            TraceFault.TooFew => ($"only {trace.Lines.Length} readings, which is no log of a pull", "log the whole pull, from slack to slack"),
            TraceFault.AllZero => ("every reading of the force is zero", "is the cell connected, and is this the right column?"),
            TraceFault.TooCoarse => ("no pull found: the reading moves in steps nearly as large as the whole pull", "log more digits, or take a smaller cell or a higher gain"),
            TraceFault.Swings => ("the pull swings too much from here on to find breakaway and sliding in it: from reading to reading nearly as far as it rises in all", "does the tyre stick and slip, or a wheel hop? try a stiffer tether, another throttle or more readings a second, or note peak and steady force off the display and fit that table"),
            TraceFault.TooFewToTell => ($"no pull found, and {trace.Lines.Length} readings are too few to tell a pull that swings from noise", "log a second of slack before the pull and more readings a second, or note peak and steady force off the display and fit that table; is this the right column?"),
            TraceFault.Reversed => (FormattableString.Invariant($"the pull reads negative ({wrong.Value:G4} N)"), advice.Reversed),
            TraceFault.Saturated => (FormattableString.Invariant($"the cell sticks at its greatest reading, {wrong.Value:G5} N, from here on: it is saturated"), "use a larger cell or a lower gain; what it cut off cannot be known"),
            TraceFault.NoSlack => ("the log never goes slack, so the reading of the slack chain is not known", advice.NoSlack),
            _ => ("no pull found: the force never rises out of its noise", "is this the right column and the right unit? log some slack before the pull too"),
        };
        return new Problem(file, line, 1, Severity.Error, message, help);
    }
}
