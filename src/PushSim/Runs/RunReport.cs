using PushSim.Numerics;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Runs;

/// <summary>Puts a run's result together: status and cause, warnings, answers, verdict.</summary>
internal static class RunReport
{
    // Share of the robot's mass in tread rings above which their inertia shows in a slide [1].
    private const double TreadMassWarning = 0.03;

    // A tether that is slack for less than this bounced; one that hangs longer was let go [s].
    private const double ShortSlack = 0.2;

    // Share of the greatest force on a tether that the tyres did not hold, from which on it is a jerk [1].
    private const double JerkShare = 0.2;

    // Bounces from which a pull has no steady part.
    private const int ManyBounces = 3;

    public static RunResult Refused(ScenarioSettings scenario, string cause) => new()
    {
        Scenario = scenario,
        Status = RunStatus.Failed,
        Cause = cause,
        Verdict = $"The run could not start: {cause}.",
        Warnings = [],
        Time = [],
        Channels = [],
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
        double[] time = recorder.Time[..recorder.Count];
        RunHistory[] histories = [.. recorder.Robots.Select((r, k) => new RunHistory(
            r.System.Scenario, time, [.. r.Channels(recorder.Count), .. k == 0 ? recorder.ContactChannels() : []]))];
        RunHistory history = histories[0];
        List<Mark> marks = [];
        bool hasHistory = recorder.Count >= 2;
        RunAnswers[] answers = [.. histories.Select((h, k) => hasHistory ? AnswerFinder.Find(h, k == 0 ? marks : []) : new RunAnswers())];
        bool isPush = hasHistory && scene.Contacts.Count > 0;
        IReadOnlyList<LimitSpan>[] limits = [.. histories.Select(h => isPush ? PushLimits.Find(h, AnswerFinder.FirstCommand(h)) : [])];
        for (int k = 0; isPush && k < answers.Length; k++)
        {
            answers[k] = answers[k] with { LimitedBy = PushLimits.Mostly(limits[k], recorder.Watch.TouchTime) is PushLimit most ? Verdict.Words(most) : null };
        }

        ShoveOutcome? shove = scenario.Opponent is null || !hasHistory || status == RunStatus.Failed ? null
            : ShoveJudge.Judge(scenario, recorder.Watch, report.Time, history);
        OpponentRun? opponent = scenario.Opponent is null ? null : new OpponentRun(scenario.Opponent.Robot, histories[1].Channels, answers[1], limits[1]);
        return new RunResult
        {
            Scenario = scenario,
            Status = status,
            Cause = cause,
            Verdict = shove is null ? Verdict.Of(scenario, status, cause, answers[0]) : Verdict.OfShove(scenario, shove, answers[0], answers[1]),
            Warnings = [.. histories.SelectMany((h, k) => Warnings(h.Scenario, scene.Robots[k], h).Select(w => histories.Length > 1 ? $"{h.Robot.Name}: {w}" : w))],
            Time = history.Time,
            Channels = history.Channels,
            Marks = marks,
            Answers = answers[0],
            Ledger = ledger.Entries,
            EnergyResidualRatio = ledger.ResidualRatio,
            RhsEvaluations = report.Evaluations,
            Steps = report.Steps,
            RejectedSteps = report.Rejected,
            Limits = limits[0],
            Opponent = opponent,
            Shove = shove,
            CellReadings = LoadCell.Read(scenario.Tether?.Cell, history.Time, history.Find("tether_force_n")?.Values),
        };
    }

    private static (RunStatus Status, string Cause) Ending(ScenarioSettings scenario, SceneSystem scene, Recorder recorder, IntegrationReport report, double[] last)
    {
        string at = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"at {report.Time:0.000} s");
        if (last.Any(v => !double.IsFinite(v)))
        {
            return (RunStatus.Failed, $"the state is no longer finite {at}; report this scenario");
        }

        for (int k = 0; k < recorder.Robots.Count; k++)
        {
            if (recorder.Watch.Robots[k].BusResidual > MatchWatch.BusFailure)
            {
                return (RunStatus.Failed, $"the battery of {recorder.Robots[k].System.Scenario.Robot.Name} cannot deliver what its controllers ask for; take a battery with less resistance or lower the current limits");
            }
        }

        if (recorder.Watch.HasTipped)
        {
            return (RunStatus.Tips, $"tipped or lost the floor {at}");
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

    private static void AddTether(List<string> warnings, RunHistory history, double[] force)
    {
        const string Calm = "less slack, a slower ramp or more damping of the tether calms it";
        int peak = Array.IndexOf(force, force.Max());
        double held = Math.Abs(history.Robot.Wheels.Select((_, i) => history.Wheel(i, "longitudinal_force_n")[peak]).Sum());
        if (force[peak] - held > JerkShare * force[peak])
        {
            warnings.Add(Text($"the greatest force of {force[peak]:0.00} N is a jerk and no breakaway: the tyres held {held:0.00} N of it, the rest changed the robot's speed; {Calm}"));
        }
        else if (Bounces(history.Time, force) is int bounces and >= ManyBounces)
        {
            warnings.Add($"the robot bounces on the tether, which fell slack {bounces} times; {Calm}");
        }
    }

    // How often the tether falls slack and is taut again at once.
    private static int Bounces(double[] time, double[] force)
    {
        int count = 0;
        double slackSince = double.NaN;
        for (int i = 1; i < force.Length; i++)
        {
            if (force[i - 1] > 0.0 && force[i] <= 0.0)
            {
                slackSince = time[i];
            }
            else if (force[i - 1] <= 0.0 && force[i] > 0.0 && time[i] - slackSince < ShortSlack)
            {
                count++;
            }
        }

        return count;
    }

    private static List<string> Warnings(ScenarioSettings scenario, RobotSystem system, RunHistory history)
    {
        List<string> warnings = [];
        RobotSettings robot = scenario.Robot;
        double share = robot.Wheels.Sum(w => w.Tyre.TreadMass) / robot.Chassis.Mass;
        if (share > TreadMassWarning)
        {
            warnings.Add(Text($"the tyres' tread rings are {100.0 * share:0.0} % of the robot's mass and add to its inertia while sliding"));
        }

        string[] capped = [.. robot.Wheels.Where((w, i) => ModelBuilder.RingCap(w.Tyre, system.Static.Loads[i], scenario.Numerics.RingFrequencyCap) != (1.0, 1.0))
            .Select(w => w.Tyre.Name).Distinct()];
        foreach (string tyre in capped)
        {
            warnings.Add($"tyre {tyre}: body and tread are softened to keep their ring at {Text($"{scenario.Numerics.RingFrequencyCap / (2.0 * Math.PI):0}")} Hz; faster buzz of this tyre is not resolved");
        }

        foreach ((WheelSettings wheel, double load) in robot.Wheels.Zip(system.Static.Loads))
        {
            if (load <= 0.0)
            {
                warnings.Add($"wheel {wheel.Name} carries nothing when the robot stands still");
            }
        }

        Channel? voltage = history.Find("battery_voltage_v");
        if (robot.Battery is { CutOffVoltage: > 0.0 } battery && voltage is not null && voltage.Values.Min() < battery.CutOffVoltage)
        {
            warnings.Add(Text($"the battery falls to {PlainNumber.Apart(voltage.Values.Min(), battery.CutOffVoltage)} V, below its cut-off of {battery.CutOffVoltage:0.0} V"));
        }

        if (scenario.Manoeuvre.Kind is ManoeuvreKind.PullTest or ManoeuvreKind.DragTest && history.Find("tether_force_n") is { } tether)
        {
            AddTether(warnings, history, tether.Values);
        }

        foreach ((int drive, int motor) in robot.Controllers.SelectMany(c => c.Motors))
        {
            Powertrain.MotorSettings m = robot.Drives[drive].Motors[motor].Motor;
            Channel? heat = history.Find($"motor_{Slug.Of(robot.Drives[drive].Name)}_{motor + 1}_winding_temperature_degc");
            if (heat is not null && heat.Values.Max() > m.WindingLimitTemperature)
            {
                int i = Array.FindIndex(heat.Values, v => v > m.WindingLimitTemperature);
                warnings.Add(Text($"motor {m.Name} on {robot.Drives[drive].Name} passes {m.WindingLimitTemperature:0} °C after {history.Time[i]:0.00} s"));
            }

        }

        foreach (string motor in robot.Controllers.SelectMany(c => c.Motors).Select(m => robot.Drives[m.Drive].Motors[m.Motor].Motor)
            .Where(m => m.StandstillTorqueShare < 1.0).Select(m => m.Name).Distinct())
        {
            warnings.Add($"motor {motor} is sensorless: what it does at standstill under load is not predicted");
        }

        return warnings;
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
