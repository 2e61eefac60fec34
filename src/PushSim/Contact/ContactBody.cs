namespace PushSim.Contact;

/// <summary>What a contact knows of one body: its outline about the centre of mass and the heights of its faces. A wall is a body
/// that never moves.
/// <para>
/// Faces are numbered from the foremost one and summed in pairs of mirror partners, so that the mirror image of a contact
/// is the mirror image to the last bit, whatever corner the outline was given from.
/// </para></summary>
internal sealed class ContactBody
{
    /// <summary>A body from its outline.</summary>
    /// <param name="corners">3 to 8 corners, convex, counter-clockwise from above, from the centre of mass, x forward, y left [m].</param>
    /// <param name="faces">Face i runs from corner i to the next.</param>
    /// <param name="centreHeight">Height of the centre of mass above the floor, robot level and tyres just touching [m].</param>
    /// <param name="wheels">Wheels that others can touch; null: none.</param>
    public ContactBody(IReadOnlyList<(double X, double Y)> corners, IReadOnlyList<FaceSettings> faces, double centreHeight, IReadOnlyList<RoundWheel>? wheels = null)
    {
        Wheels = wheels ?? [];
        int n = corners.Count;
        int start = Foremost(corners, out bool isCorner);
        Corners = [.. Enumerable.Range(0, n).Select(i => corners[(i + start) % n])];
        Faces = [.. Enumerable.Range(0, n).Select(i => faces[(i + start) % n])];
        IReadOnlyList<(ConvexPart Part, int Partner)> parts = PartBuilder.Parts(Corners, Faces, isCorner, centreHeight);
        Parts = [.. parts.Select(p => p.Part)];
        Groups = [.. parts.Select((p, i) => (i, p.Partner)).Where(p => p.Partner >= p.i).Select(p => p.Partner == p.i ? new[] { p.i } : [p.i, p.Partner])];
        Radius = Math.Max(
            Parts.Max(p => p.Corners.Max(c => Math.Sqrt((c.X * c.X) + (c.Y * c.Y) + (c.Z * c.Z)))),
            Wheels.Select(w => Math.Sqrt((w.X * w.X) + (w.Y * w.Y) + (w.Z * w.Z)) + double.Hypot(w.Radius, w.HalfWidth)).DefaultIfEmpty().Max());
        CentreHeight = centreHeight;
    }

    /// <summary>Corners from the centre of mass, counter-clockwise, from the start of the foremost face [m].</summary>
    public IReadOnlyList<(double X, double Y)> Corners { get; }

    /// <summary>Face i runs from corner i to the next.</summary>
    public IReadOnlyList<FaceSettings> Faces { get; }

    /// <summary>Height of the centre of mass [m].</summary>
    public double CentreHeight { get; }

    /// <summary>Its convex parts: an upright prism, then a wedge for each ramp.</summary>
    internal IReadOnlyList<ConvexPart> Parts { get; }

    /// <summary>Parts by mirror partners, whose forces are added to each other first.</summary>
    internal int[][] Groups { get; }

/// <summary>Its wheels, in the robot's order.</summary>
    internal IReadOnlyList<RoundWheel> Wheels { get; }

    /// <summary>What is no number of it: bodies that are alike run side by side in lanes.</summary>
    internal ShapeList<int> Shape => field ??= ShapeOf();

    /// <summary>Distance of the farthest corner or rim from the centre of mass [m].</summary>
    internal double Radius { get; }

    private ShapeList<int> ShapeOf()
    {
        List<int> list = [Parts.Count, Wheels.Count];
        foreach (int[] group in Groups)
        {
            list.Add(group.Length);
            list.AddRange(group);
        }

        foreach (ConvexPart part in Parts)
        {
            part.Describe(list);
        }

        return new ShapeList<int>([.. list]);
    }

    /// <summary>A robot's body from an outline in its plan.</summary>
    /// <param name="outline">Outline, from the plan's origin.</param>
    /// <param name="centreX">Centre of mass, forward of the plan's origin [m].</param>
    /// <param name="centreY">Centre of mass, left of the plan's origin [m].</param>
    /// <param name="centreHeight">Height of the centre of mass [m].</param>
    /// <param name="wheels">Its wheels, from the centre of mass.</param>
    public static ContactBody FromOutline(OutlineSettings outline, double centreX, double centreY, double centreHeight, IReadOnlyList<RoundWheel> wheels) =>
        new([.. outline.Corners.Select(corner => (corner.X - centreX, corner.Y - centreY))], outline.Faces, centreHeight, wheels);

    /// <summary>A wall's body: a box along its own x axis, about its middle; it stands at <see cref="WallPose{T}"/>.</summary>
    public static ContactBody FromWall(WallSettings wall)
    {
        double x = 0.5 * Length(wall);
        double y = 0.5 * wall.Thickness;
        FaceSettings face = new(0.0, wall.Height);
        return new([(x, -y), (x, y), (-x, y), (-x, -y)], [face, face, face, face], 0.0);
    }

    /// <summary>Where a wall stands, for ever.</summary>
    public static BodyPose<T> WallPose<T>(WallSettings wall)
        where T : struct, IReal<T>
    {
        double length = Length(wall);
        double cosine = (wall.X2 - wall.X1) / length;
        double sine = (wall.Y2 - wall.Y1) / length;
        BodyPose<T> pose = default;
        pose.X = (0.5 * (wall.X1 + wall.X2)) + (0.5 * wall.Thickness * sine);
        pose.Y = (0.5 * (wall.Y1 + wall.Y2)) - (0.5 * wall.Thickness * cosine);
        pose.XX = cosine;
        pose.XY = -sine;
        pose.YX = sine;
        pose.YY = cosine;
        pose.ZZ = 1.0;
        return pose;
    }

    private static double Length(WallSettings wall)
    {
        double x = wall.X2 - wall.X1;
        double y = wall.Y2 - wall.Y1;
        return Math.Sqrt((x * x) + (y * y));
    }

    // The face whose middle is foremost, of several the one nearest to the centre line. Two that are still alike are mirror
    // partners on either side of a nose corner: then the left one is the start and the axis goes through the corner.
    private static int Foremost(IReadOnlyList<(double X, double Y)> corners, out bool isCorner)
    {
        int n = corners.Count;
        (double X, double Y)[] middles =
            [.. corners.Select((c, i) => (0.5 * (c.X + corners[(i + 1) % n].X), 0.5 * (c.Y + corners[(i + 1) % n].Y)))];
        double x = middles.Max(m => m.X);
        double y = middles.Where(m => m.X == x).Min(m => Math.Abs(m.Y));
        int[] best = [.. Enumerable.Range(0, n).Where(i => middles[i].X == x && Math.Abs(middles[i].Y) == y)];
        isCorner = best.Length > 1;
        return best.MaxBy(i => middles[i].Y);
    }
}
