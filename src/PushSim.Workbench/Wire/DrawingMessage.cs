namespace PushSim.Workbench.Wire;

/// <summary>A robot's shape in mm: x forward, y left, z up from the floor, from the balance point on the floor.</summary>
internal sealed record DrawingMessage(TopMessage Top, SideMessage Side);

internal sealed record TopMessage(double[][] Body, IReadOnlyList<BoxMessage> Wheels, IReadOnlyList<BoxMessage> Motors, BoxMessage? Pack, IReadOnlyList<BoxMessage> Controllers, double[][] Nose, double[] Balance);

internal sealed record BoxMessage(double X, double Y, double Length, double Width);

internal sealed record SideMessage(double[][] Body, IReadOnlyList<DiscMessage> Wheels, IReadOnlyList<DiscMessage> Motors, SideBoxMessage? Pack, double[][] Nose, double[] Balance);

internal sealed record DiscMessage(double X, double Z, double Radius);

internal sealed record SideBoxMessage(double X, double Z, double Length, double Height);
