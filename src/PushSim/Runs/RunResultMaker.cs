using PushSim.Binding;
using PushSim.Simulation;
using PushSim.Surroundings;

namespace PushSim.Runs;

/// <summary>Puts a run's result together: status and cause, answers, warnings.</summary>
internal static class RunResultMaker
{
    public static RunResult Refused(ScenarioSettings scenario, string refusal) => new()
    {
        Scenario = scenario,
        Status = RunStatus.Failed,
        Stop = RunStop.Refused(refusal),
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
        ScenarioSettings scenario, SceneSystem scene, Recorder recorder, IntegrationOutcome report, EnergyLedger ledger, double[] last)
    {
        RunStop? stop = Ending(scenario, scene, recorder.Watch, report, last);
        RunStatus status = stop is null ? RunStatus.Finished : stop.Kind == RunStopKind.Upset ? RunStatus.Tips : RunStatus.Failed;
        RunHistory[] histories = [.. scene.Robots.Zip(recorder.Traces).Select((r, k) => new RunHistory(r.First.Scenario, r.Second, recorder.Bindings(k)) { Peaks = recorder.Watch.Robots[k].AllPeaks })];
        RunHistory history = histories[0];
        List<Mark> marks = [];
        bool isStarved = Starved(scene, recorder.Watch) is not null;
        bool isTold = history.Time.Length >= 2 && !isStarved;
        bool isUpset = status == RunStatus.Tips && scenario.Opponent is null;
        RunAnswers[] answers = [.. histories.Select((h, k) => !isTold ? new RunAnswers() : isUpset ? AnswerFinder.OfAny(h) : AnswerFinder.Find(h, k == 0 ? marks : []))];
        bool isPush = isTold && scene.Contacts.Count > 0;
        IReadOnlyList<BindingSpan>[] limits = [.. histories.Select(h => isPush ? BindingSpans.Find(h.Time, h.DrivenBindings, h.IndexAt(AnswerFinder.FirstCommand(h))) : [])];
        PushHops?[] hops = [.. histories.Select(h => isPush ? HopFinder.Find(h, recorder.Watch.TouchTime) : null)];
        for (int k = 0; isPush && k < answers.Length; k++)
        {
            // since the touch by the rule of drawn matches; before one, over the whole run
            BindingShares? bound = double.IsNaN(recorder.Watch.TouchTime) ? AnswerFinder.Bound(histories[k], 0, history.Time.Length - 1) : recorder.Watch.Robots[k].Binding;
            answers[k] = answers[k] with { Binding = bound, IsNearTopSpeed = bound?.Leading == BindingKind.Motor && NearTopSpeed.Is(histories[k], recorder.Watch.TouchTime), Chatter = hops[k]?.Frequency ?? answers[k].Chatter };
        }

        ShoveOutcome? shove = scenario.Opponent is null || !isTold || status == RunStatus.Failed ? null
            : ShoveJudge.Judge(scenario, recorder.Watch, report.Time, history, histories[1]);
        OpponentRun? opponent = scenario.Opponent is null ? null : new OpponentRun(scenario.Opponent.Robot, histories[1].Trace, answers[1], limits[1]) { Hops = hops[1] };
        return new RunResult
        {
            Scenario = scenario,
            Status = status,
            Stop = stop,
            Warnings = [.. histories.SelectMany((h, k) => RunWarnings.Of(scene.Robots[k], h, hops[k]).Select(w => w with { Robot = k })), .. TipHeights.Of(histories, recorder.Watch.TouchTime)],
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
            Hops = hops[0],
            Shove = shove,
            CellReadings = LoadCell.Read(scenario.Tether?.Cell, history.Time.Values, history.Trace.Tether is { } tether ? tether.Force.Values : []),
        };
    }

    /// <summary>Why a run ended before its time; null if it did not.</summary>
    public static RunStop? Ending(ScenarioSettings scenario, SceneSystem scene, MatchWatch watch, IntegrationOutcome report, double[] last)
    {
        if (last.Any(v => !double.IsFinite(v)))
        {
            return new RunStop(RunStopKind.State, report.Time);
        }

        if (Starved(scene, watch) is RobotSettings robot)
        {
            return new RunStop(RunStopKind.Battery, report.Time) { Robot = robot };
        }

        if (watch.HasTipped)
        {
            int tipped = watch.Robots[0].HasTipped ? 0 : 1;
            return new RunStop(RunStopKind.Upset, report.Time) { Robot = scene.Robots[tipped].Scenario.Robot, Upset = watch.Robots[tipped].Upset };
        }

        return report.Status switch
        {
            IntegrationStatus.NotFinite => new RunStop(RunStopKind.Rates, report.Time),
            IntegrationStatus.StepTooSmall => Slow(RunStopKind.Step),
            IntegrationStatus.EvaluationCap => Slow(RunStopKind.Work),
            _ => null,
        };

        RunStop Slow(RunStopKind kind)
        {
            (FastMode fastest, RobotSettings slowest) = FastMode.Of(scenario, scene);
            return new RunStop(kind, report.Time) { Evaluations = report.Evaluations, AllowedRate = scenario.Numerics.MaxEvaluationsPerSecond, Fastest = fastest, Robot = slowest };
        }
    }

    // The robot whose battery failed, null if none did; from then on currents are not those of any battery, nor is the energy
    private static RobotSettings? Starved(SceneSystem scene, MatchWatch watch) => watch.Starved < 0 ? null : scene.Robots[watch.Starved].Scenario.Robot;
}
