namespace PushSim.Plotting.Drawing;

/// <summary>A map at one moment.</summary>
/// <param name="Words">Which moment.</param>
/// <param name="Shapes">What stands on it.</param>
internal sealed record MapStrip(string Words, IReadOnlyList<MapShape> Shapes);

/// <summary>A robot on a map.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Robot">0 the first robot, 1 its opponent.</param>
/// <param name="Outline">Its corners, in the order of its closed outline.</param>
/// <param name="Within">Open lines, as its nose and wheels.</param>
internal sealed record MapShape(string Name, int Robot, IReadOnlyList<(double X, double Y)> Outline, IReadOnlyList<IReadOnlyList<(double X, double Y)>> Within);

/// <summary>A robot's line on the floor.</summary>
/// <param name="Words">Its words.</param>
/// <param name="Robot">0 the first robot, 1 its opponent.</param>
/// <param name="X">Where it lies, in the unit of the horizontal axis.</param>
internal sealed record MapLine(string Words, int Robot, double X);
