namespace PushSim.Contact;

/// <summary>What other robots and walls touch: a convex outline seen from above, with heights per face. Frame as in <see cref="Chassis.ChassisSettings"/>.</summary>
public sealed record OutlineSettings
{
    /// <summary>3 to 8 corners, convex, counter-clockwise from above, from the plan's origin [m].</summary>
    public required IReadOnlyList<(double X, double Y)> Corners { get; init; }

    /// <summary>One face per corner: face i runs from corner i to the next.</summary>
    public required IReadOnlyList<FaceSettings> Faces { get; init; }

    /// <summary>What of it rubs on the floor.</summary>
    public UndersideSettings Underside { get; init; } = new();

    /// <summary>Height of the lower edge of an outline that states none [m].</summary>
    public const double DefaultClearance = 0.004;

    /// <summary>Whether ramps leave anything behind the lines at which their slopes end.</summary>
    /// <param name="corners">Corners of an outline [m].</param>
    /// <param name="faces">Its faces.</param>
    public static bool LeavesABody(IReadOnlyList<(double X, double Y)> corners, IReadOnlyList<FaceSettings> faces) => PartBuilder.CutBack(corners, faces) is not null;

    /// <summary>The body box with upright faces, centred on the plan's origin.</summary>
    /// <param name="chassis">The body.</param>
    /// <param name="clearance">Height of the lower edges [m].</param>
    /// <param name="top">Height of the upper edges [m].</param>
    public static OutlineSettings Box(Chassis.ChassisSettings chassis, double clearance, double top)
    {
        double x = 0.5 * chassis.Length;
        double y = 0.5 * chassis.Width;
        var face = new FaceSettings(clearance, top);
        return new OutlineSettings { Corners = [(x, -y), (x, y), (-x, y), (-x, -y)], Faces = [face, face, face, face] };
    }
}
