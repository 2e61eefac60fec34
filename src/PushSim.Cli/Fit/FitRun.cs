using System.Text.RegularExpressions;
using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Cli.Shared;
using PushSim.Scenarios;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using PushSim.Words.Fits;

namespace PushSim.Cli.Fit;

/// <summary>Reads logs and robot, sorts pulls by tyre, fits each.</summary>
internal static partial class FitRun
{
    // Loads that differ by less are the same weighing [1].
    private const double SameLoad = 0.005;

    /// <summary>All of a fit but what the tyres make of a robot.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <param name="progress">Where a simulated fit says how far it is; null: nowhere.</param>
    public static FitResult Do(FitRequest request, CancellationToken cancel, TextWriter? progress = null)
    {
        List<Problem> problems = [];
        List<string> notes = [];
        ReadResult? read = request.RobotFile is null ? null : ScenarioReader.Check(request.RobotFile);
        problems.AddRange(read?.Problems.Where(p => p.Severity == Severity.Error) ?? []);
        bool cannotRead = read?.CannotRead ?? false;
        var tests = new SortedTests();
        for (int k = 0; k < request.Files.Count; k++)
        {
            LogResult log = LogReader.Read(request.Files[k], request.Log, cancel);
            problems.AddRange(log.Problems);
            notes.AddRange(log.Notes.Select(n => request.Files.Count > 1 ? $"{log.File}: {n}" : n));
            cannotRead |= log.CannotRead;
            Sort(log, NameOf(request.Files, k), request, tests, problems);
        }

        if (cannotRead || problems.Any(p => p.Severity == Severity.Error))
        {
            return new FitResult { Problems = problems, CannotRead = cannotRead };
        }

        if (Lacking(request, read, tests) is string missing)
        {
            return new FitResult { Problems = problems, Missing = missing };
        }

        RobotSettings? robot = read?.Robot;
        double? height = request.Height ?? read?.Scenario?.Tether?.HookHeight;
        GripLoad load = LoadOf(request, robot, height);
        if (Unloaded(tests, load) is string unloaded)
        {
            return new FitResult { Problems = problems, Missing = unloaded };
        }

        if (request.Load is double said && tests.Readings.Values.SelectMany(r => r).Count(r => r.Load > 0.0 && Math.Abs(r.Load.Value - said) > SameLoad * said) is > 0 and int rows)
        {
            notes.Add(FormattableString.Invariant($"{rows} {(rows == 1 ? "row gives a load of its own" : "rows give loads of their own")}, which {(rows == 1 ? "was" : "were")} taken in place of --load {said:0.###} N"));
        }

        StallForce? stall = robot is null ? null : StallForce.Of(robot, Throttle(read?.Scenario));
        List<TyreFit> fits = FitEach(request, tests, load, stall, cancel);
        if (load.DependsOnHeight && height is null)
        {
            fits = [.. fits.Select(f => f with { Warnings = [.. f.Warnings, new PullWarning.NoHeight()] })];
        }

        notes.AddRange(fits.SelectMany(f => PullWords.Notes(f).Select(n => fits.Count > 1 ? $"{f.Name}: {n}" : n)));
        IReadOnlyList<(string Tyre, SimulationFit? Fit)> simulated = request.Simulate ? Simulate(read!.Scenario!, fits, cancel, progress) : [];
        return new FitResult { Problems = problems, Fits = fits, Simulated = simulated, Comparison = TyreComparison.Of(fits, request.Difference), Notes = [.. notes.Distinct()], Robot = robot, Read = read, Stall = stall };
    }

    private static List<(string Tyre, SimulationFit? Fit)> Simulate(ScenarioSettings scenario, List<TyreFit> fits, CancellationToken cancel, TextWriter? progress)
    {
        var line = new ProgressLine(progress ?? TextWriter.Null, "search steps at most", (long)fits.Count * SimulationFitter.MostSteps, isQuiet: progress is null);
        List<(string Tyre, SimulationFit? Fit)> simulated = [];
        try
        {
            foreach (TyreFit fit in fits)
            {
                long before = (long)simulated.Count * SimulationFitter.MostSteps;
                simulated.Add((fit.Name, SimulationFitter.Fit(scenario, fit, cancel, n => line.StepTo(before + n))));
            }
        }
        finally
        {
            line.End();
        }

        return simulated;
    }

    // Puts the traces and readings of one log under the names of their tyres.
    private static void Sort(LogResult log, string fileName, FitRequest request, SortedTests tests, List<Problem> problems)
    {
        foreach (LogTrace trace in log.Traces)
        {
            FoundTrace found = PullFinder.Find(trace.Trace, request.Tare);
            if (found.Problem is TraceProblem wrong)
            {
                problems.Add(TraceWords.Of(log.File, trace, wrong, LogAdvice.OfFit));
            }

            tests.Add(request.Tyre ?? trace.Tyre ?? fileName, found);
        }

        foreach (LogReading reading in log.Readings)
        {
            if (Wrong(log.File, reading, log.Readings) is Problem problem)
            {
                problems.Add(problem);
                break;
            }

            tests.Add(request.Tyre ?? reading.Tyre ?? fileName, reading);
        }
    }

    // What the command line lacks; null if nothing.
    private static string? Lacking(FitRequest request, ReadResult? read, SortedTests tests)
    {
        bool hasOwnLoads = tests.Traces.Count == 0 && tests.Readings.Values.All(r => r.All(x => x.Load > 0.0));
        if (request.Load is null && read?.Robot is null && !hasOwnLoads)
        {
            return "the load on the tested tyres is not known; add --load \"420 gf\" (what a scale shows under them), or --robot FILE";
        }

        return request.Simulate ? CannotSimulate(request, read, tests.Traces.Count) : null;
    }

    private static GripLoad LoadOf(FitRequest request, RobotSettings? robot, double? height)
    {
        return request.Load is double newton ? GripLoad.Fixed(newton)
            : robot is not null ? GripLoad.Of(robot, height ?? 0.0, request.IsDrag)
            : GripLoad.Fixed(double.NaN);
    }

    // A tether so high, or a force so great, that the tyres under test leave the floor; null if none does.
    private static string? Unloaded(SortedTests tests, GripLoad load)
    {
        double[] forces =
        [
            .. tests.Traces.Values.SelectMany(t => t).SelectMany(t => t.Pulls).SelectMany(p => new[] { p.Breakaway.Value, p.Plateau?.Value ?? 0.0 }),
            .. tests.Readings.Values.SelectMany(r => r).Where(r => !(r.Load > 0.0)).SelectMany(r => new[] { r.Force ?? 0.0, r.Peak ?? 0.0 }),
        ];
        double most = forces.DefaultIfEmpty(0.0).Max();
        return load.DependsOnHeight && load.LoadAt(most) <= 0.0
            ? FormattableString.Invariant($"{most:0.00} N at the height of the tether would lift the tested tyres off the floor; check --height, the mass in the robot file and the unit of the readings")
            : null;
    }

    private static List<TyreFit> FitEach(FitRequest request, SortedTests tests, GripLoad load, StallForce? stall, CancellationToken cancel)
    {
        // readings of one table stand in the order of its numbers of pulls, or of its rows; between files no order is known
        bool hasOrder = request.Files.Count == 1 && tests.Traces.Count == 0;
        if (hasOrder && tests.Readings.Values.All(r => r.All(x => x.Pull is not null)))
        {
            foreach (List<LogReading> list in tests.Readings.Values)
            {
                list.Sort((a, b) => a.Pull!.Value.CompareTo(b.Pull!.Value));
            }
        }

        List<TyreFit> fits = [];
        foreach (string name in tests.Names)
        {
            cancel.ThrowIfCancellationRequested();
            fits.Add(tests.Traces.TryGetValue(name, out List<FoundTrace>? logs)
                ? PullFit.OfTraces(name, logs, load, stall, request.IsDrag)
                : OfReadings(name, tests.Readings[name], load, stall, request.IsDrag, hasOrder));
        }

        return fits;
    }

    // What a scenario of the pulls commands [1]; full without one.
    private static double Throttle(ScenarioSettings? scenario)
    {
        double most = scenario is { Manoeuvre.Kind: ManoeuvreKind.PullTest } s ? s.Manoeuvre.GreatestThrottle : 0.0;
        return most > 0.0 ? most : 1.0;
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

    private static TyreFit OfReadings(string name, List<LogReading> readings, GripLoad load, StallForce? stall, bool isDrag, bool hasOrder)
    {
        double[] order = [.. hasOrder ? readings.Where(r => r.Force is not null).Select(r => r.Pull ?? r.Line) : []];
        if (!readings.Any(r => r.Load > 0.0))
        {
            return PullFit.OfReadings(name, Values(r => r.Force), Values(r => r.Peak), load, stall, isDrag) with { Order = order };
        }

        readings = [.. readings.Select(r => r.Load > 0.0 ? r : r with { Load = load.LoadAt(r.Force ?? r.Peak!.Value) })];

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

    // Traces and readings by the name of their tyre, and the names as they first came.
    private sealed class SortedTests
    {
        public Dictionary<string, List<FoundTrace>> Traces { get; } = new(StringComparer.Ordinal);

        public Dictionary<string, List<LogReading>> Readings { get; } = new(StringComparer.Ordinal);

        public List<string> Names { get; } = [];

        public void Add(string name, FoundTrace trace) => Add(Traces, name, trace);

        public void Add(string name, LogReading reading) => Add(Readings, name, reading);

        private void Add<T>(Dictionary<string, List<T>> sorted, string name, T item)
        {
            if (!sorted.TryGetValue(name, out List<T>? list))
            {
                sorted.Add(name, list = []);
            }

            list.Add(item);
            if (!Names.Contains(name))
            {
                Names.Add(name);
            }
        }
    }
}
