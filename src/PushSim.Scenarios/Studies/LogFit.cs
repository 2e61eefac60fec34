using System.Text.RegularExpressions;
using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Shelf;

namespace PushSim.Scenarios.Studies;

/// <summary>Reads logs and robot, sorts pulls by tyre, fits each.</summary>
public static partial class LogFit
{
    // A load that differs by more from the robot's weight is another one: scales and ballast do not [1].
    private const double SameWeight = 0.1;

    /// <summary>All of a fit but what the tyres make of a robot, which <see cref="LogMeaning"/> tells.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="progress">Told the steps that a simulated fit has done and those it takes at most [1]; null for nobody.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <param name="early">Told what the pulls say alone, before a simulated fit begins; null for nobody.</param>
    public static FitResult Of(FitRequest request, Action<long, long>? progress = null, CancellationToken cancel = default, Action<FitResult>? early = null)
    {
        List<Problem> problems = [];
        List<string> notes = [];
        ReadResult? read = request.RobotFile is null ? null : ScenarioReader.Check(request.RobotFile, new ReadOptions { Set = request.Set, Garage = request.Garage });
        problems.AddRange(read?.Problems.Where(p => p.Severity == Severity.Error) ?? []);
        bool cannotRead = read?.CannotRead ?? false;
        var tests = new PullTests();
        Dictionary<string, string> materials = new(StringComparer.Ordinal);
        for (int k = 0; k < request.Files.Count; k++)
        {
            LogResult log = LogReader.Read(request.Files[k], request.Log, cancel);
            problems.AddRange(log.Problems);
            notes.AddRange(log.Notes.Select(n => request.Files.Count > 1 ? $"{log.File}: {n}" : n));
            cannotRead |= log.CannotRead;
            Sort(log, NameOf(request.Files, k), request, tests, problems);
            foreach ((string tyre, string material) in log.Materials)
            {
                materials.TryAdd(request.Tyre ?? tyre, material);
            }
        }

        CheckMaterials(request, materials, problems);
        var none = new FitResult { Problems = problems, CannotRead = cannotRead };
        if (cannotRead || problems.Any(p => p.Severity == Severity.Error))
        {
            return none;
        }

        RobotSettings? robot = read?.Robot;
        if ((request.Load is null && robot is null && !tests.HasOwnLoads ? FitLack.Load : request.Simulate ? CannotSimulate(request, read?.Scenario, tests) : null) is FitLack lack)
        {
            return none with { Lack = lack };
        }

        double? height = request.Height ?? read?.Scenario?.Tether?.HookHeight;
        GripLoad load = LoadOf(request, robot, height);
        if (tests.ForceThatLifts(load) is double lifting)
        {
            return none with { Lack = FitLack.LowTether, LiftingForce = lifting };
        }

        StallForce? stall = robot is null ? null : StallForce.Of(robot, Throttle(read?.Scenario));
        IReadOnlyList<TyreFit> fits = tests.Fit(load, stall, request.IsDrag, request.Files.Count == 1, cancel);
        if (!request.Simulate && CannotSimulate(request, read?.Scenario, tests) is null)
        {
            fits = [.. fits.Select(f => RoundTrip.Of(read!.Scenario!, f, load, cancel)?.Into(f) ?? f)];
        }

        List<(string Tyre, SimulationFit? Fit)> simulated = [];
        if (request.Simulate)
        {
            early?.Invoke(Result());
            simulated = Simulate(read!.Scenario!, fits, progress, cancel);
        }

        return Result();

        FitResult Result()
        {
            IReadOnlyList<TyreFit> told = [.. fits.Select((f, k) => (simulated.Count > 0 ? simulated[k].Fit?.Into(f) : null) ?? f).Select(f => OtherWeight(f, robot) is { } other ? f with { Warnings = [.. f.Warnings, other] } : f)];
            return none with
            {
                Fits = told,
                Simulated = simulated,
                Tables = [.. told.Select((f, k) => FittedTable.Of(f, read, Material(f.Name, robot, request, materials), simulated.Count > 0 ? simulated[k].Fit : null))],
                Comparison = TyreComparison.Of(told, request.Difference),
                Notes = notes,
                ReadingsOfOtherLoad = request.Load is double said ? tests.ReadingsOfOtherLoad(said) : 0,
                IsHeightUnknown = load.DependsOnHeight && height is null,
                Robot = robot,
                Read = read,
                Stall = stall,
            };
        }
    }

    // What a fit is made of: as told, else the material of its own name, unless the robot has a tyre of that name
    private static ShelfPart? Material(string tyre, RobotSettings? robot, FitRequest request, Dictionary<string, string> materials)
    {
        bool isOwn = robot?.Wheels.Any(w => string.Equals(w.Tyre.Name, tyre, StringComparison.OrdinalIgnoreCase)) ?? false;
        string? told = request.Material ?? materials.GetValueOrDefault(tyre);
        return PartShelf.Tyres.Find(told ?? (isOwn ? "" : tyre));
    }

    private static void CheckMaterials(FitRequest request, Dictionary<string, string> materials, List<Problem> problems)
    {
        if (request.Material is string asked && PartShelf.Tyres.Find(asked) is null)
        {
            problems.Add(new Problem(ReadOptions.CommandLine, 1, 1, Severity.Error, $"there is no tyre material \"{SourceFile.Clean(asked, 60)}\" on the shelf", PartShelf.Tyres.Advice(asked)));
        }

        // a column called material alone names the tyres
        foreach ((string tyre, string material) in materials.Where(m => request.Material is null && m.Key != m.Value && PartShelf.Tyres.Find(m.Value) is null))
        {
            problems.Add(new Problem(request.Files[0], 0, 0, Severity.Warning, $"tyre \"{SourceFile.Clean(tyre, 60)}\": there is no material \"{SourceFile.Clean(material, 60)}\" on the shelf", PartShelf.Tyres.Advice(material)));
        }
    }

    private static List<(string Tyre, SimulationFit? Fit)> Simulate(ScenarioSettings scenario, IReadOnlyList<TyreFit> fits, Action<long, long>? progress, CancellationToken cancel)
    {
        List<(string Tyre, SimulationFit? Fit)> simulated = [];
        foreach (TyreFit fit in fits)
        {
            long before = (long)simulated.Count * SimulationFitter.MostSteps;
            simulated.Add((fit.Name, SimulationFitter.Fit(scenario, fit, cancel, n => progress?.Invoke(before + n, (long)fits.Count * SimulationFitter.MostSteps))));
        }

        return simulated;
    }

    // Puts the traces and readings of one log under the names of their tyres.
    private static void Sort(LogResult log, string fileName, FitRequest request, PullTests tests, List<Problem> problems)
    {
        foreach (LogTrace trace in log.Traces)
        {
            FoundTrace found = PullFinder.Find(trace.Trace, request.Tare);
            if (found.Problem is TraceProblem wrong)
            {
                problems.Add(TraceWords.Of(log.File, trace, wrong, request.Log.Advice));
            }

            tests.Add(request.Tyre ?? trace.Tyre ?? fileName, found);
        }

        foreach (PullReading reading in log.Readings)
        {
            if (Wrong(log.File, reading, log.Readings, request.Log.Advice) is Problem problem)
            {
                problems.Add(problem);
                break;
            }

            tests.Add(request.Tyre ?? reading.Tyre ?? fileName, reading);
        }
    }

    private static GripLoad LoadOf(FitRequest request, RobotSettings? robot, double? height)
    {
        return request.Load is double newton ? GripLoad.Fixed(newton, request.CommonOff)
            : robot is not null ? GripLoad.Of(robot, height ?? 0.0, request.IsDrag, request.CommonOff)
            : GripLoad.Fixed(double.NaN, request.CommonOff);
    }

    // What a scenario of the pulls commands [1]; full without one.
    private static double Throttle(ScenarioSettings? scenario)
    {
        double most = scenario is { Manoeuvre.Traits: { Family: ManoeuvreFamily.Pull, IsDragged: false } } s ? s.Manoeuvre.GreatestThrottle : 0.0;
        return most > 0.0 ? most : 1.0;
    }

    // A load that was told and that the robot's weight, all of which is on the tyres under test, contradicts; null if none does. Pulls at several loads are meant to differ from it.
    private static PullWarning.OtherWeight? OtherWeight(TyreFit fit, RobotSettings? robot)
    {
        if (robot is null || fit.LoadExponent is not null || GripLoad.TestedWheels(robot).Count < robot.Wheels.Count)
        {
            return null;
        }

        double weight = GripLoad.Of(robot, 0.0, isDrag: false).LoadAt(0.0);
        return Math.Abs(fit.Load - weight) > SameWeight * weight ? new PullWarning.OtherWeight(fit.Load, weight) : null;
    }

    // What a simulated test lacks; null if nothing.
    private static FitLack? CannotSimulate(FitRequest request, ScenarioSettings? scenario, PullTests tests) => scenario switch
    {
        null => FitLack.Scenario,
        { Tether: null } or { Manoeuvre.Traits.Family: not ManoeuvreFamily.Pull } => FitLack.Tether,
        { Manoeuvre.Traits.IsDragged: false } when request.IsDrag => FitLack.DragScenario,
        { Manoeuvre.Traits.IsDragged: true } when !request.IsDrag => FitLack.Drag,
        _ => tests.HasTraces ? null : FitLack.Traces,
    };

    private static Problem? Wrong(string file, PullReading reading, IReadOnlyList<PullReading> all, LogAdvice advice)
    {
        double value = reading.Force ?? reading.Peak ?? 0.0;
        if (all.All(r => (r.Force ?? r.Peak) == 0.0))
        {
            return new Problem(file, reading.Line, 1, Severity.Error, "every reading is zero", "is the cell connected, and is this the right column?");
        }

        if (value < 0.0)
        {
            return new Problem(file, reading.Line, 1, Severity.Error, "this reading is negative", advice.Reversed);
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
