using System.Diagnostics;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Fit;
using PushSim.Analysis.Meaning;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Scenes;

namespace PushSim.Scenarios.Studies;

/// <summary>Puts each fitted tyre on the robot, with its motors and with stronger ones, and runs it.</summary>
public static class LogMeaning
{
    /// <summary>All of it; null if nothing was asked, or the robot does not drive and need not.</summary>
    public static MeaningResult? Of(FitRequest request, FitResult outcome, CancellationToken cancel)
    {
        if (request.Meaning is not MeaningRequest asked || outcome.Robot is not RobotSettings robot || outcome.Fits.Count == 0)
        {
            return null;
        }

        var none = new MeaningResult { Robot = robot.Name, Stronger = asked.Stronger, Shoves = asked.Shoves, Seed = asked.Seed };
        if (robot.Battery is null || robot.Controllers.Count == 0)
        {
            bool isAsked = asked.Opponent is not null || asked.Stronger is not null;
            return isAsked ? none with { Lack = MeaningLack.Drive } : null;
        }

        if (asked.Opponent is not null && outcome.Read?.Scenario is not null)
        {
            return none with { Lack = MeaningLack.RobotFile };
        }

        long start = Stopwatch.GetTimestamp();
        List<Candidate> tyres = [];
        string[] wheels = [.. GripLoad.TestedWheels(robot).Select(i => robot.Wheels[i].Name)];
        foreach ((TyreFit fit, FittedTable table) in outcome.Fits.Zip(outcome.Tables).Where(f => f.Second.IsWhole).OrderByDescending(f => f.First.ForModel.Kinetic))
        {
            cancel.ThrowIfCancellationRequested();
            var options = new ReadOptions { Set = request.Set, Garage = request.Garage, Tyre = new TyreChange(table.Text, wheels) };
            ReadResult made = ScenarioReader.Check(request.RobotFile!, options);
            DrawableResult? pair = asked.Opponent is null ? null : DrawableScenario.OfPair(request.RobotFile!, asked.Opponent, asked.Scene, options);
            ReadResult? unreadable = made.Robot is null ? made : pair is { Scenario: null } ? pair.Read : null;
            if (unreadable is not null)
            {
                return none with { Problems = [.. unreadable.Problems.Where(p => p.Severity == Severity.Error)], CannotRead = unreadable.CannotRead };
            }

            tyres.Add(new Candidate(FittedTyre.Of(fit, table.IsMaterialKnown), made.Robot!, pair?.Scenario));
        }

        return none with
        {
            Opponent = tyres.Select(t => t.Pair?.Middle.Opponent?.Robot.Name).FirstOrDefault() ?? "",
            Tyres = Find(tyres, asked, outcome.Read?.Scenario, cancel),
            Contest = tyres.Select(t => asked.Contest ?? t.Pair?.Label).FirstOrDefault() ?? "",
            Drawn = [.. tyres.SelectMany(t => t.Pair?.Values ?? [])],
            LeftOut = [.. outcome.Fits.Where(f => f.Limit.IsInconsistent).Select(f => (f.Name, "its forces contradict the robot file"))],
            Seconds = Stopwatch.GetElapsedTime(start).TotalSeconds,
        };
    }

    // Each tyre with the robot's own motors, then each with stronger ones if that was asked.
    private static TyreMeaning[] Find(List<Candidate> tyres, MeaningRequest asked, ScenarioSettings? scene, CancellationToken cancel)
    {
        Func<RobotSettings, RobotSettings>?[] motors = asked.Stronger is double factor ? [null, r => MeaningFinder.Stronger(r, factor)] : [null];
        (Candidate On, Func<RobotSettings, RobotSettings>? Motors)[] jobs = [.. motors.SelectMany(m => tyres.Select(t => (t, m)))];
        var found = new TyreMeaning[jobs.Length];
        try
        {
            Parallel.For(0, jobs.Length, new ParallelOptions { MaxDegreeOfParallelism = asked.Threads, CancellationToken = cancel }, k =>
                found[k] = MeaningFinder.Find(jobs[k].On.Robot, jobs[k].On.Tyre, jobs[k].Motors, scene?.Floor ?? MeaningFinder.UsualFloor, scene?.TyreLife, cancel));
        }
        catch (AggregateException e) when (cancel.IsCancellationRequested)
        {
            throw new OperationCanceledException(e.Message, e, cancel);
        }

        for (int k = 0; k < jobs.Length; k++)
        {
            found[k] = found[k] with { Shoves = Shoves(jobs[k].On.Pair, jobs[k].Motors, asked, cancel) };
        }

        return found;
    }

    private static Tally? Shoves(DrawableScenario? pair, Func<RobotSettings, RobotSettings>? motors, MeaningRequest asked, CancellationToken cancel)
    {
        if (pair is null)
        {
            return null;
        }

        var source = new FileMatchSource(pair, new ContestKey(asked.Seed, asked.Contest ?? pair.Label), change: motors);
        var tally = Tally.Of(Campaign.Run(new BatchMatchRunner(source.Middle), source, (0, asked.Shoves), [], 0.0, asked.Threads, _ => { }, cancel));
        cancel.ThrowIfCancellationRequested();
        return tally;
    }

    private sealed record Candidate(FittedTyre Tyre, RobotSettings Robot, DrawableScenario? Pair);
}
