using PushSim.Numerics;

namespace PushSim.Simulation;

/// <summary>How far the robot that has been pushed back furthest is behind its line, negative before it [m].</summary>
internal readonly struct LineFunction(SceneSystem scene, double line) : IEventFunction
{
    /// <summary>The states it reads: each robot's x in its own floor frame.</summary>
    public static int[] Components(SceneSystem scene) =>
        [.. Enumerable.Range(0, scene.Robots.Count).Select(k => scene.FirstExplicit(k) + StateLayout.X)];

    public double Evaluate(double t, ReadOnlySpan<double> y)
    {
        double furthest = double.NegativeInfinity;
        for (int k = 0; k < scene.Robots.Count; k++)
        {
            furthest = Math.Max(furthest, scene.Robots[k].Start.X - y[scene.FirstExplicit(k) + StateLayout.X]);
        }

        return furthest - line;
    }
}
