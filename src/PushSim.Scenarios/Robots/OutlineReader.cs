using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Robots;

/// <summary>Reads a robot's [outline]: corners, heights and ramps of what others touch.</summary>
internal static class OutlineReader
{
    private const int FewestCorners = 3;
    private const int MostCorners = 8;

    // Area below which three corners in a row count as straight [m^2].
    private const double LeastArea = 1e-8;

    // Halvings in which the highest top that fits is found, and the share of it that is taken [1].
    private const int Halvings = 40;
    private const double LeftOfFit = 0.98;

    // The faces' outward directions in the order of the key's words.
    private static readonly (double X, double Y)[] Sides = [(1, 0), (-1, 0), (0, 1), (0, -1)];

    /// <summary>The outline; the body box where corners are left out.</summary>
    public static OutlineSettings Read(Section s, ChassisSettings chassis)
    {
        double clearance = s.Or("clearance", OutlineSettings.DefaultClearance);
        double top = s.Or("top", chassis.Height);
        if (top <= clearance)
        {
            s.Context.Error(s.PlaceOf("top"), FormattableString.Invariant($"the outline's top, {1e3 * top:F1} mm, is not above its clearance, {1e3 * clearance:F1} mm"), "raise top or lower clearance");
        }

        OutlineSettings box = OutlineSettings.Box(chassis, clearance, top);
        IReadOnlyList<(double X, double Y)> corners = s.Has("corner") ? Corners(s) : box.Corners;
        var upright = new FaceSettings(clearance, top);
        FaceSettings[] faces = [.. corners.Select(_ => upright)];
        bool[] isStated = new bool[faces.Length];
        foreach (Section ramp in s.Tables("ramp"))
        {
            ReadRamp(ramp, top, corners, faces, isStated);
        }

        if (faces.Any(f => f.RampAngle is not null) && corners.Count is >= FewestCorners and <= MostCorners && s.Context.Problems.All(p => p.Severity != Severity.Error) && !Fit(corners, faces, isStated))
        {
            s.Context.Error(s.PlaceOf("ramp"), "the ramps run through the whole body", "give a ramp a lower top or a steeper angle");
        }

        UndersideSettings usual = new();
        return new OutlineSettings
        {
            Corners = corners,
            Faces = faces,
            Underside = usual with { Friction = s.Or("floor_friction", usual.Friction), Restitution = s.Or("floor_restitution", usual.Restitution) },
        };
    }

    // Lowers the tops that nobody states until the slopes leave a body behind them; false where that does not help.
    private static bool Fit(IReadOnlyList<(double X, double Y)> corners, FaceSettings[] faces, bool[] isStated)
    {
        if (OutlineSettings.LeavesABody(corners, faces))
        {
            return true;
        }

        FaceSettings[] Lowered(double share) => [.. faces.Select((f, i) => f.RampAngle is null || isStated[i] ? f : f with { UpperEdge = f.LowerEdge + (share * (f.UpperEdge - f.LowerEdge)) })];
        double low = 0.0;
        double high = 1.0;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = OutlineSettings.LeavesABody(corners, Lowered(middle)) ? (middle, high) : (low, middle);
        }

        if (!(low > 0.0))
        {
            return false;
        }

        // a little of the body stays
        Lowered(LeftOfFit * low).CopyTo(faces, 0);
        return true;
    }

    private static List<(double X, double Y)> Corners(Section s)
    {
        IReadOnlyList<Section> sections = s.Tables("corner");
        List<(double X, double Y)> corners = [.. sections.Select(c => (c.Required("x"), c.Required("y")))];
        if (corners.Count is < FewestCorners or > MostCorners)
        {
            s.Context.Error(s.PlaceOf("corner"), $"{corners.Count} corners, but an outline has {FewestCorners} to {MostCorners}", "leave corner out for the body box");
            return corners;
        }

        double turned = 0.0;
        for (int i = 0; i < corners.Count; i++)
        {
            (double X, double Y) a = corners[i];
            (double X, double Y) b = corners[(i + 1) % corners.Count];
            (double X, double Y) c = corners[(i + 2) % corners.Count];
            double turn = ((b.X - a.X) * (c.Y - b.Y)) - ((b.Y - a.Y) * (c.X - b.X));
            if (turn <= LeastArea)
            {
                s.Context.Error(sections[(i + 1) % corners.Count].Place, "the outline does not turn left at this corner", "give the corners counter-clockwise seen from above, bulging outward everywhere");
                return corners;
            }

            turned += Math.Atan2(turn, ((b.X - a.X) * (c.X - b.X)) + ((b.Y - a.Y) * (c.Y - b.Y)));
        }

        // a star turns left at every corner too, but goes round twice or more
        if (turned > 3.0 * Math.PI)
        {
            s.Context.Error(s.PlaceOf("corner"), "the outline crosses itself", "give the corners in the order in which they come around the robot");
        }

        return corners;
    }

    private static void ReadRamp(Section s, double outlineTop, IReadOnlyList<(double X, double Y)> corners, FaceSettings[] faces, bool[] isStated)
    {
        int side = s.Choice("side");
        double tip = s.Required("tip");
        double top = s.Or("top", outlineTop);
        double angle = s.Required("angle");
        if (top <= tip)
        {
            s.Context.Error(s.PlaceOf("top"), FormattableString.Invariant($"the ramp's top, {1e3 * top:F1} mm, is not above its tip, {1e3 * tip:F1} mm"), "raise top or lower tip");
        }

        if (side < 0 || corners.Count != faces.Length || corners.Count < FewestCorners)
        {
            return;
        }

        (double X, double Y) outward = Sides[side];
        int face = Enumerable.Range(0, faces.Length).MaxBy(i => Alignment(corners[i], corners[(i + 1) % corners.Count], outward));
        if (faces[face].RampAngle is not null)
        {
            s.Context.Error(s.PlaceOf("side"), "this face already has a ramp", "give each side one ramp");
        }

        faces[face] = new FaceSettings(tip, top, angle);
        isStated[face] = s.Has("top");
    }

    // Cosine between a face's outward normal (dy, -dx) and a direction.
    private static double Alignment((double X, double Y) from, (double X, double Y) to, (double X, double Y) outward)
    {
        double dx = to.X - from.X;
        double dy = to.Y - from.Y;
        return ((dy * outward.X) - (dx * outward.Y)) / double.Hypot(dx, dy);
    }
}
