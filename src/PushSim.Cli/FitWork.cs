using System.Text.RegularExpressions;
using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Scenarios;
using PushSim.Scenarios.Logs;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>Reads logs and robot, sorts pulls by tyre, fits each.</summary>
internal static partial class FitWork
{
    public static FitOutcome Do(FitRequest request, CancellationToken cancel)
    {
        List<Problem> problems = [];
        List<string> notes = [];
        bool cannotRead = false;
        ReadResult? read = request.RobotFile is null ? null : ScenarioReader.Check(request.RobotFile);
        if (read is not null)
        {
            problems.AddRange(read.Problems.Where(p => p.Severity == Severity.Error));
            cannotRead |= read.CannotRead;
        }

        Dictionary<string, List<FoundTrace>> traces = new(StringComparer.Ordinal);
        Dictionary<string, List<LogReading>> readings = new(StringComparer.Ordinal);
        List<string> order = [];
        for (int k = 0; k < request.Files.Count; k++)
        {
            LogResult log = LogReader.Read(request.Files[k], request.Log, cancel);
            problems.AddRange(log.Problems);
            notes.AddRange(log.Notes.Select(n => request.Files.Count > 1 ? $"{log.File}: {n}" : n));
            cannotRead |= log.CannotRead;
            string name = request.Tyre ?? NameOf(request.Files, k);
            foreach (LogTrace trace in log.Traces)
            {
                FoundTrace found = PullFinder.Find(trace.Trace, request.Tare);
                if (found.Problem is TraceProblem wrong)
                {
                    problems.Add(TraceWords.Of(log.File, trace, wrong));
                }

                Add(traces, request.Tyre ?? trace.Tyre ?? name, found);
                Remember(request.Tyre ?? trace.Tyre ?? name);
            }

            foreach (LogReading reading in log.Readings)
            {
                if (Wrong(log.File, reading, log.Readings) is Problem problem)
                {
                    problems.Add(problem);
                    break;
                }

                Add(readings, request.Tyre ?? reading.Tyre ?? name, reading);
                Remember(request.Tyre ?? reading.Tyre ?? name);
            }
        }

        if (cannotRead || problems.Any(p => p.Severity == Severity.Error))
        {
            return new FitOutcome { Problems = problems, CannotRead = cannotRead };
        }

        RobotSettings? robot = read?.Robot;
        bool hasOwnLoads = traces.Count == 0 && readings.Values.All(r => r.All(x => x.Load > 0.0));
        if (request.Load is null && robot is null && !hasOwnLoads)
        {
            return new FitOutcome { Problems = problems, Missing = "the load on the tested tyres is not known; add --load \"420 gf\" (what a scale shows under them), or --robot FILE" };
        }

        if (request.Simulate && CannotSimulate(request, read, traces.Count) is string missing)
        {
            return new FitOutcome { Problems = problems, Missing = missing };
        }

        double height = request.Height ?? read?.Scenario?.Tether?.HookHeight ?? 0.0;
        GripLoad load = request.Load is double newton ? GripLoad.Fixed(newton) : robot is null ? GripLoad.Fixed(double.NaN) : GripLoad.Of(robot, height, request.IsDrag);
        if (load.DependsOnHeight && request.Height is null && read?.Scenario?.Tether is null)
        {
            notes.Add("not all wheels are driven, so the height of the tether matters: taken as 0, add --height or name a scenario with a tether");
        }

        StallForce? stall = robot is null ? null : StallForce.Of(robot, Throttle(read?.Scenario));
        List<TyreFit> fits = [];

        // readings of one table stand in the order of its numbers of pulls, or of its rows; between files no order is known
        bool hasOrder = request.Files.Count == 1 && traces.Count == 0;
        if (hasOrder && readings.Values.All(r => r.All(x => x.Pull is not null)))
        {
            foreach (List<LogReading> list in readings.Values)
            {
                list.Sort((a, b) => a.Pull!.Value.CompareTo(b.Pull!.Value));
            }
        }

        foreach (string name in order)
        {
            cancel.ThrowIfCancellationRequested();
            fits.Add(traces.TryGetValue(name, out List<FoundTrace>? logs)
                ? PullFit.OfTraces(name, logs, load, stall, request.IsDrag)
                : OfReadings(name, readings[name], load, stall, request.IsDrag, hasOrder));
        }

        List<(string Tyre, SimulationFit? Fit)> simulated = [.. fits.Where(_ => request.Simulate).Select(f => (f.Name, SimulationFitter.Fit(read!.Scenario!, f, cancel)))];
        return new FitOutcome { Problems = problems, Fits = fits, Simulated = simulated, Comparison = TyreComparison.Of(fits, request.Difference), Notes = [.. notes.Distinct()], Robot = robot, Read = read, Stall = stall };

        void Remember(string name)
        {
            if (!order.Contains(name))
            {
                order.Add(name);
            }
        }
    }

    // What a scenario of the pulls commands [1]; full without one.
    private static double Throttle(ScenarioSettings? scenario)
    {
        double most = scenario is { Manoeuvre.Kind: ManoeuvreKind.PullTest } s ? s.Manoeuvre.Commands.Select(c => Math.Abs(c.Throttle)).DefaultIfEmpty(0.0).Max() : 0.0;
        return most > 0.0 ? Math.Min(1.0, most) : 1.0;
    }

    // What a simulated test lacks; null if nothing.
    private static string? CannotSimulate(FitRequest request, ReadResult? read, int logs)
    {
        if (request.RobotFile is null || read?.Scenario is not ScenarioSettings scenario)
        {
            return "--simulate runs the test as it was done; add --robot with a scenario of it (robot, floor, tether, manoeuvre), for example scenarios/pull-test.toml";
        }

        if (scenario.Tether is null || scenario.Manoeuvre.Kind is not (ManoeuvreKind.PullTest or ManoeuvreKind.DragTest))
        {
            return $"--simulate needs a scenario with a tether and a manoeuvre of kind \"pull\" or \"drag\"; {PlainText.Of(request.RobotFile)} has none";
        }

        if (request.IsDrag != (scenario.Manoeuvre.Kind == ManoeuvreKind.DragTest))
        {
            return request.IsDrag ? "--drag and a scenario of kind \"pull\" contradict each other" : "the scenario is a drag: add --drag";
        }

        return logs == 0 ? "--simulate needs logs over time: readings off a display show one force only" : null;
    }

    private static void Add<T>(Dictionary<string, List<T>> sorted, string name, T item)
    {
        if (!sorted.TryGetValue(name, out List<T>? list))
        {
            sorted.Add(name, list = []);
        }

        list.Add(item);
    }

    private static TyreFit OfReadings(string name, List<LogReading> readings, GripLoad load, StallForce? stall, bool isDrag, bool hasOrder)
    {
        double[] order = [.. hasOrder ? readings.Where(r => r.Force is not null).Select(r => r.Pull ?? r.Line) : []];
        if (readings.Any(r => !(r.Load > 0.0)))
        {
            return PullFit.OfReadings(name, Values(r => r.Force), Values(r => r.Peak), load, stall, isDrag) with { Order = order };
        }

        // readings at several loads are brought to their mean by the load's share, or by the exponent that they show; a row may have a peak alone
        LogReading[] steady = [.. readings.Where(r => r.Force is not null)];
        double mean = readings.Average(r => r.Load!.Value);
        LoadDependence? law = LoadDependence.Fit([.. steady.Select(r => r.Load!.Value)], [.. steady.Select(r => r.Force!.Value)], mean);
        double p = law?.Exponent.Value ?? 0.0;
        double At(double value, double n) => value * Math.Pow(mean / n, 1.0 - p);
        TyreFit fit = PullFit.OfReadings(
            name,
            [.. steady.Select(r => At(r.Force!.Value, r.Load!.Value))],
            [.. readings.Where(r => r.Peak is not null).Select(r => At(r.Peak!.Value, r.Load!.Value))],
            GripLoad.Fixed(mean),
            stall,
            isDrag);
        return fit with { Order = order, LoadExponent = law?.Exponent, KineticFriction = law?.Friction ?? fit.KineticFriction };

        List<double> Values(Func<LogReading, double?> of) => [.. readings.Select(of).Where(v => v is not null).Select(v => v!.Value)];
    }

    private static Problem? Wrong(string file, LogReading reading, IReadOnlyList<LogReading> all)
    {
        double value = reading.Force ?? reading.Peak ?? 0.0;
        if (all.All(r => (r.Force ?? r.Peak) == 0.0))
        {
            return new Problem(file, reading.Line, 1, Severity.Error, "every reading is zero", "is the cell connected, and is this the right column?");
        }

        if (value < 0.0)
        {
            return new Problem(file, reading.Line, 1, Severity.Error, "this reading is negative", "if the cell is wired the other way round, add --flip");
        }

        return value == 0.0 ? new Problem(file, reading.Line, 1, Severity.Error, "this reading is zero", "empty the cell if there was no pull") : null;
    }

    // soft-1.csv and soft-2.csv are two pulls of "soft"; a lone number at the end may be part of a name.
    private static string NameOf(IReadOnlyList<string> files, int k)
    {
        string[] stems = [.. files.Select(f => Path.GetFileNameWithoutExtension(f))];
        string[] cut = [.. stems.Select(s => Numbered().Replace(s, ""))];
        bool isShared = cut[k].Length > 0 && cut[k] != stems[k] && cut.Count(c => c == cut[k]) > 1;
        return isShared ? cut[k] : stems[k];
    }

    [GeneratedRegex(@"[-_ .]*(pull|run|test|no)?[-_ .]*\d+$", RegexOptions.IgnoreCase)]
    private static partial Regex Numbered();
}
