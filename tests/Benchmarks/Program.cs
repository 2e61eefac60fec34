using System.Diagnostics;
using System.Globalization;
using PushSim.Benchmarks;
using PushSim.Benchmarks.Measurements;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests;

// Work, time and error of each pair and tolerance, beside the general numerics package's fixed-step RK4, in one run.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["pass"])
{
    LanePassTimer.Run();
    return 0;
}

if (args is ["measurements", .. string[] asked])
{
    return MeasureBench.Run(asked);
}

if (args is ["files", .. string[] files])
{
    FileBench.Run(files);
    return 0;
}

if (args is ["runs", .. string[] runs])
{
    RunBench.Run(runs);
    return 0;
}

if (args is ["workbench", .. string[] where])
{
    await WorkbenchBench.RunAsync(where);
    return 0;
}

if (args is ["sliders", .. string[] moved])
{
    await WorkbenchBench.WatchAsync(moved);
    return 0;
}

if (args is ["engine", string shipped, .. string[] other])
{
    EngineBench.Run(shipped, other.FirstOrDefault());
    return 0;
}

if (args is ["matches", .. string[] rest])
{
    MatchBench.Run(rest);
    return 0;
}

Console.WriteLine($"{PassTimer.NanosecondsPerPass():0} ns for one right-hand-side pass, four wheels");
RobotSettings damped = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalDamping = 8.0 });
ScenarioSettings shove = TestRobots.Shove(damped.WithMass(1.6), damped) with { Shove = new ShoveSettings { Gap = 0.05, Line = 100.0 } };
ScenarioSettings offCentre = shove with { Shove = shove.Shove with { Offset = 0.02 } };
(string, ScenarioSettings)[] scenarios =
[
    ("launch", TestRobots.Launch()), ("spot", TestRobots.Spot()), ("pull", TestRobots.Pull()), ("shove", shove), ("askew", offCentre),
];
foreach ((string name, ScenarioSettings scenario) in scenarios)
{
    ScenarioSettings sparse = scenario with { Numerics = scenario.Numerics with { SampleRate = 10.0 } };
    ScenarioSettings canonical = SceneBuilder.InCanonicalOrder(sparse);
    double[] exact = Bare(canonical, "ARK4(3)", 1e-10).Y;
    foreach (string method in AdditiveTableau.All.Select(t => t.Name))
    {
        foreach (double tolerance in new[] { 1e-2, 1e-3, 1e-4, 1e-5, 1e-6 })
        {
            (double[] y, long evaluations, double ms, long bytes) = Bare(canonical, method, tolerance);
            Console.WriteLine($"{name,-7} {method} at {tolerance:0e0}: {evaluations,6} evaluations, {ms,6:0.00} ms, position off {1e3 * Off(y, exact):0.0000} mm, {bytes} bytes allocated");
        }
    }

    foreach (int steps in new[] { 12_500, 25_000, 50_000, 100_000 })
    {
        (double[] y, double ms) = GeneralPackage.FixedStep(canonical, steps);
        Console.WriteLine($"{name,-7} general package's RK4, {steps} steps: {4 * steps,7} evaluations, {ms,6:0} ms, position off {1e3 * Off(y, exact):0.0000} mm");
    }

    // once before, so that the JIT is done with it
    Best(() => Simulator.Run(scenario));
    double whole = Best(() => Simulator.Run(scenario));
    Console.WriteLine($"{name,-7} whole run at the defaults with 1000 samples/s and answers: {whole:0.00} ms");
}

return 0;

static double Off(double[] y, double[] exact) => double.Hypot(y[0] - exact[0], y[1] - exact[1]) + (0.1 * Math.Abs(y[2] - exact[2]));

static double Best(Action action)
{
    double best = double.MaxValue;
    for (int i = 0; i < 40; i++)
    {
        long start = Stopwatch.GetTimestamp();
        action();
        best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
    }

    return best;
}

static (double[] Y, long Evaluations, double Ms, long Bytes) Bare(ScenarioSettings scenario, string method, double tolerance)
{
    var system = new SceneSystem(scenario);
    var integration = new SingleRun<SceneSystem>(system, AdditiveTableau.ByName(method));
    IntegrationSettings settings = Simulator.Settings(scenario with { Numerics = scenario.Numerics with { Tolerance = tolerance } }, system);
    double[] y0 = system.InitialState();
    double[] y = new double[y0.Length];
    var observer = new Blind();
    IntegrationOutcome report = default;
    long bytes = 0;
    double ms = Best(() =>
    {
        y0.CopyTo(y, 0);
        long before = GC.GetAllocatedBytesForCurrentThread();
        report = integration.Run(0.0, scenario.Manoeuvre.EndTime, y, system.Breakpoints, settings, observer);
        bytes = GC.GetAllocatedBytesForCurrentThread() - before;
    });
    return (y, report.Evaluations, ms, bytes);
}

internal struct Blind : IStepObserver
{
    public readonly StepDecision OnStep(DenseOutput step) => StepDecision.Continue;
}
