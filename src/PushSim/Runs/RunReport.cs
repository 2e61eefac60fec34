using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Simulation;
using PushSim.Surroundings;

namespace PushSim.Runs;

/// <summary>Puts a run's result together: status and cause, answers, verdict.</summary>
internal static class RunReport
{
    public static RunResult Refused(ScenarioSettings scenario, string cause) => new()
    {
        Scenario = scenario,
        Status = RunStatus.Failed,
        Cause = cause,
        Verdict = $"The run could not start: {cause}.",
        Warnings = [],
        Trace = Trace.Empty,
        Marks = [],
        Answers = new RunAnswers(),
        Ledger = [],
        EnergyResidualRatio = 0.0,
        RhsEvaluations = 0,
        Steps = 0,
        RejectedSteps = 0,
    };

    public static RunResult Make(
        ScenarioSettings scenario, SceneSystem scene, Recorder recorder, IntegrationReport report, EnergyLedger ledger, double[] last)
    {
        (RunStatus status, string cause) = Ending(scenario, scene, recorder, report, last);
        RunHistory[] histories = [.. scene.Robots.Zip(recorder.Traces).Select((r, k) => new RunHistory(r.First.Scenario, r.Second, recorder.Bindings(k)))];
        RunHistory history = histories[0];
        List<Mark> marks = [];
        bool isStarved = Starved(scene, recorder) is not null;
        bool isTold = history.Time.Length >= 2 && !isStarved;
        bool isUpset = status == RunStatus.Tips && scenario.Opponent is null;
        RunAnswers[] answers = [.. histories.Select((h, k) => !isTold ? new RunAnswers() : isUpset ? AnswerFinder.OfAny(h) : AnswerFinder.Find(h, k == 0 ? marks : []))];
        bool isPush = isTold && scene.Contacts.Count > 0;
        IReadOnlyList<BindingSpan>[] limits = [.. histories.Select(h => isPush ? BindingSpans.Find(h.Time, h.DrivenBindings, h.IndexAt(AnswerFinder.FirstCommand(h))) : [])];
        for (int k = 0; isPush && k < answers.Length; k++)
        {
            // since the touch by the rule of drawn matches; before one, over the whole run
            BindingShares? bound = double.IsNaN(recorder.Watch.TouchTime) ? AnswerFinder.Bound(histories[k], 0, history.Time.Length - 1) : recorder.Watch.Robots[k].Binding;
            answers[k] = answers[k] with { Binding = bound, IsNearTopSpeed = bound?.Leading == BindingKind.Motor && NearTopSpeed.Is(histories[k], recorder.Watch.TouchTime) };
        }

        ShoveOutcome? shove = scenario.Opponent is null || !isTold || status == RunStatus.Failed ? null
            : ShoveJudge.Judge(scenario, recorder.Watch, report.Time, history, histories[1]);
        OpponentRun? opponent = scenario.Opponent is null ? null : new OpponentRun(scenario.Opponent.Robot, histories[1].Trace, answers[1], limits[1]);
        return new RunResult
        {
            Scenario = scenario,
            Status = status,
            Cause = cause,
            Verdict = shove is null ? Verdict.Of(scenario, status, cause, answers[0]) : Verdict.OfShove(scenario, shove, answers[0], answers[1]),
            Warnings = [.. histories.SelectMany((h, k) => RunWarnings.Of(scene.Robots[k], h, recorder.Watch.Robots[k].Upset, answers[k].Chatter is not null).Select(w => histories.Length > 1 ? $"{h.Robot.Name}: {w}" : w))],
            Trace = history.Trace,
            Marks = marks,
            Answers = answers[0],
            Ledger = isStarved ? [] : ledger.Entries,
            EnergyResidualRatio = ledger.ResidualRatio,
            RhsEvaluations = report.Evaluations,
            Steps = report.Steps,
            RejectedSteps = report.Rejected,
            Limits = limits[0],
            Bindings = history.Bindings,
            Opponent = opponent,
            Shove = shove,
            CellReadings = LoadCell.Read(scenario.Tether?.Cell, history.Time.Values, history.Trace.Tether is { } tether ? tether.Force.Values : []),
        };
    }

    // Name of the robot whose battery failed, null if none did; from then on currents are not those of any battery, nor is the energy
    private static string? Starved(SceneSystem scene, Recorder recorder) =>
        scene.Robots.Where((_, k) => recorder.Watch.Robots[k].BusResidual > MatchWatch.BusFailure).FirstOrDefault()?.Scenario.Robot.Name;

    private static (RunStatus Status, string Cause) Ending(ScenarioSettings scenario, SceneSystem scene, Recorder recorder, IntegrationReport report, double[] last)
    {
        string at = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"at {report.Time:0.000} s");
        if (last.Any(v => !double.IsFinite(v)))
        {
            return (RunStatus.Failed, $"the state is no longer finite {at}; report this scenario");
        }

        if (Starved(scene, recorder) is string robot)
        {
            return (RunStatus.Failed, $"the battery of {robot} cannot deliver what its controllers ask for; take a battery with less resistance or lower the current limits");
        }

        if (recorder.Watch.HasTipped)
        {
            return (RunStatus.Tips, $"{Verdict.Words(recorder.Watch.Robots[recorder.Watch.Robots[0].HasTipped ? 0 : 1].Upset)} {at}");
        }

        return report.Status switch
        {
            IntegrationStatus.NotFinite => (RunStatus.Failed, $"a force, current or temperature is not finite {at}; report this scenario"),
            IntegrationStatus.StepTooSmall => (RunStatus.Failed, $"the step became too small {at}; {FastMode.Words(scenario, scene)}"),
            IntegrationStatus.EvaluationCap => (RunStatus.Failed, string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"more work than allowed {at}, {report.Evaluations} evaluations at {scenario.Numerics.MaxEvaluationsPerSecond:0} per simulated second; {FastMode.Words(scenario, scene)}")),
            _ => (RunStatus.Finished, string.Empty),
        };
    }
}
