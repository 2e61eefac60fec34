using System.Diagnostics;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Fit;
using PushSim.Analysis.Meaning;
using PushSim.Cli.Chance;
using PushSim.Scenarios;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Shelf;
using PushSim.Simulation;
using PushSim.Surroundings;

namespace PushSim.Cli;

/// <summary>Puts each fitted tyre on the robot, with its motors and with stronger ones, and runs it.</summary>
internal static class MeaningWork
{
    public static MeaningResult? Do(FitRequest request, FitOutcome outcome, CancellationToken cancel)
    {
        if (request.Meaning is not MeaningRequest asked || outcome.Robot is not RobotSettings robot || outcome.Fits.Count == 0)
        {
            return null;
        }

        bool isAsked = asked.Opponent is not null || asked.Stronger is not null;
        var none = new MeaningResult { Request = asked, Robot = robot.Name };
        if (robot.Battery is null || robot.Controllers.Count == 0)
        {
            return isAsked ? none with { Missing = $"{robot.Name} has no battery or no controllers, so nothing drives it; --against and --stronger-motor need a robot that drives" } : null;
        }

        if (asked.Opponent is not null && outcome.Read?.Scenario is not null)
        {
            return none with { Missing = "--against needs a robot file after --robot, not a scenario; give the height of the tether with --height" };
        }

        long start = Stopwatch.GetTimestamp();
        List<(FittedTyre Tyre, RobotSettings Robot, DrawableScenario? Pair)> tyres = [];
        foreach (TyreFit fit in outcome.Fits.Where(f => !f.Limit.IsInconsistent).OrderByDescending(f => f.ForModel.Kinetic))
        {
            cancel.ThrowIfCancellationRequested();
            bool isOwn = robot.Wheels.Any(w => string.Equals(w.Tyre.Name, fit.Name, StringComparison.OrdinalIgnoreCase));
            string? material = isOwn ? null : PartShelf.Tyres.Find(fit.Name)?.Name;
            RobotSettings? made = material is null ? null : ScenarioReader.Check(request.RobotFile!, new ReadOptions { TyreMaterial = material }).Robot;
            material = made is null ? null : material;
            DrawableScenario? pair = null;
            if (asked.Opponent is not null)
            {
                DrawableResult read = DrawableScenario.OfPair(request.RobotFile!, asked.Opponent, null, new ReadOptions { TyreMaterial = material });
                if (read.Scenario is null)
                {
                    return none with { Problems = [.. read.Read.Problems.Where(p => p.Severity == Severity.Error)], CannotRead = read.Read.CannotRead };
                }

                pair = read.Scenario;
            }

            tyres.Add((FittedTyre.Of(fit, made ?? robot, material is not null), made ?? robot, pair));
        }

        Func<RobotSettings, RobotSettings>? stronger = asked.Stronger is double factor ? r => MeaningFinder.Stronger(r, factor) : null;
        FloorSettings floor = outcome.Read?.Scenario?.Floor ?? new FloorSettings();
        var jobs = new List<(FittedTyre Tyre, RobotSettings Robot, DrawableScenario? Pair, Func<RobotSettings, RobotSettings>? Motors)>();
        Func<RobotSettings, RobotSettings>?[] motors = stronger is null ? [null] : [null, stronger];
        jobs.AddRange(motors.SelectMany(m => tyres.Select(t => (t.Tyre, t.Robot, t.Pair, m))));
        var found = new TyreMeaning[jobs.Count];
        try
        {
            Parallel.For(0, jobs.Count, new ParallelOptions { MaxDegreeOfParallelism = asked.Threads, CancellationToken = cancel }, k =>
                found[k] = MeaningFinder.Find(jobs[k].Robot, jobs[k].Tyre, jobs[k].Motors, floor, cancel));
        }
        catch (AggregateException e) when (cancel.IsCancellationRequested)
        {
            throw new OperationCanceledException(e.Message, e, cancel);
        }

        for (int k = 0; k < jobs.Count; k++)
        {
            found[k] = found[k] with { Shoves = Shoves(jobs[k].Tyre, jobs[k].Pair, jobs[k].Motors, asked, cancel) };
        }

        return none with
        {
            Opponent = tyres.Select(t => t.Pair?.Middle.Opponent?.Robot.Name).FirstOrDefault() ?? "",
            Tyres = found,
            LeftOut = [.. outcome.Fits.Where(f => f.Limit.IsInconsistent).Select(f => (f.Name, "its forces contradict the robot file"))],
            Seconds = Stopwatch.GetElapsedTime(start).TotalSeconds,
        };
    }

    private static Tally? Shoves(FittedTyre tyre, DrawableScenario? pair, Func<RobotSettings, RobotSettings>? motors, MeaningRequest asked, CancellationToken cancel)
    {
        if (pair is null)
        {
            return null;
        }

        var source = new FittedShoves(new FileMatchSource(pair, asked.Seed), tyre, motors ?? (r => r), asked.Seed);
        var tally = Tally.Of(Campaign.Run(new BatchMatchRunner(source.With(pair.Middle)), source, (0, asked.Shoves), [], 0.0, asked.Threads, _ => { }, cancel));
        cancel.ThrowIfCancellationRequested();
        return tally;
    }
}
