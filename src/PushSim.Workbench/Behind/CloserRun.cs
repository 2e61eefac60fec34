using System.Diagnostics;
using PushSim.Analysis;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Limits;
using PushSim.Scenarios.Drawing;
using PushSim.Workbench.Answers;
using PushSim.Workbench.Designs;
using PushSim.Workbench.Events;

namespace PushSim.Workbench.Behind;

/// <summary>The answer as the command `run` gives it: whole accuracy, and the closer look.</summary>
internal sealed class CloserRun(EventHub hub)
{
    private Design? _done;
    private RunResult? _before;

    /// <summary>Looks closer at a job's run, once.</summary>
    public void Look(BehindJob job, CancellationToken cancel)
    {
        if (job.Run is null || job.Read.Scenario is not { } scenario || (ReferenceEquals(_done, job.Design) && ReferenceEquals(_before, job.BeforeRun)))
        {
            return;
        }

        RunResult run = Simulator.Run(scenario, cancel);
        IMatchSource? drawn = run.Shove is not null && DrawableScenario.Open(job.Design.Shown, job.Design.Options).Scenario is { } d ? new FileMatchSource(d, new ContestKey(1, d.Label)) : null;
        RunResult looked = PlausibilityFinder.Review(CloserLook.Review(run, new WorkBudget(CloserLook.UsualWork, cancel), drawn));
        cancel.ThrowIfCancellationRequested();
        AnswerMessage answer = AnswerMaker.Of(looked, job.BeforeRun) with { Number = job.Number, Whole = true, Ms = Math.Round(Stopwatch.GetElapsedTime(job.Since).TotalMilliseconds, 1) };
        hub.Send("answer", answer, WireContext.Default.AnswerMessage);
        hub.Send("closer", new CloserMessage(job.Number, answer.Sure.Length > 0 ? answer.Sure : "A closer look changes nothing."), WireContext.Default.CloserMessage);
        (_done, _before) = (job.Design, job.BeforeRun);
    }
}
