using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Measures what the steps of a run allocate.</summary>
internal static class Allocation
{
    /// <summary>A finer tolerance takes more steps and no more memory.</summary>
    public static void SameAtFinerTolerance(ScenarioSettings scenario, double coarse, double fine)
    {
        _ = Of(scenario, coarse);
        (long few, int fewSteps) = Of(scenario, coarse);
        (long many, int manySteps) = Of(scenario, fine);

        // a box per segment may come or go as the JIT improves the code; an object per step would be thousands
        Assert.True(manySteps > fewSteps + 20);
        Assert.InRange(many - few, -256, 256);
    }

    /// <summary>Bytes that one run allocates after its set-up, and its steps.</summary>
    private static (long Bytes, int Steps) Of(ScenarioSettings scenario, double tolerance)
    {
        scenario = SceneBuilder.InCanonicalOrder(scenario with { Numerics = scenario.Numerics with { Tolerance = tolerance } });
        var scene = new SceneSystem(scenario);
        var integration = new SingleRun<SceneSystem>(scene, AdditiveTableau.ByName("ARK4(3)"));
        IntegrationSettings settings = Simulator.Settings(scenario, scene);
        double[] y = scene.InitialState();
        Silent observer = default;
        long least = long.MaxValue;
        int steps = 0;

        // a collection on another thread's behalf counts the rest of this thread's buffer: the least of a few runs is the run's own
        for (int i = 0; i < 3; i++)
        {
            double[] start = [.. y];
            long before = GC.GetAllocatedBytesForCurrentThread();
            steps = integration.Run(0.0, scenario.Manoeuvre.EndTime, start, scene.Breakpoints, settings, observer).Steps;
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        return (least, steps);
    }

    private struct Silent : IStepObserver
    {
        public readonly StepDecision OnStep(DenseOutput step) => StepDecision.Continue;
    }
}
