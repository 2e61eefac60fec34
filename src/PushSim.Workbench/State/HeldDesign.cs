using PushSim.Analysis.Limits;
using PushSim.Scenarios.Editing;
using PushSim.Workbench.Answers;
using PushSim.Workbench.Designs;

namespace PushSim.Workbench.State;

/// <summary>A design that others are compared with, with its answers once they were asked for.</summary>
/// <param name="design">The files.</param>
/// <param name="read">What was read from them.</param>
/// <param name="rows">Their values by key.</param>
/// <param name="words">What a page calls it.</param>
internal sealed class HeldDesign(Design design, ReadResult read, Dictionary<string, EditRow> rows, string words)
{
    private RunResult? _run;
    private LimitResult? _limits;

    /// <summary>The files.</summary>
    public Design Design => design;

    /// <summary>Their values by key.</summary>
    public Dictionary<string, EditRow> Rows => rows;

    /// <summary>What a page calls it.</summary>
    public string Words => words;

    /// <summary>Limits of its robot; null where no robot could be read.</summary>
    public LimitResult? Limits() => _limits ??= read.Robot is { } robot ? LimitAnswer.Of(robot) : null;

    /// <summary>Its run; null where no scenario could be read.</summary>
    public RunResult? Run(CancellationToken cancel) => _run ??= read.Scenario is { } scenario ? AnswerRun.Fast(scenario, cancel) : null;
}
