using PushSim.Contact;

namespace PushSim.Tests.Oracle;

/// <summary>A convex solid: corners, faces with what bounds them, and the edges that press.</summary>
internal sealed class OracleSolid
{
    private readonly Vector[] _own;
    private readonly Face[] _faces;

    private OracleSolid(Vector[] corners, Face[] faces, (int From, int To)[] edges)
    {
        (_own, _faces, Edges) = (corners, faces, edges);
        Corners = [.. corners];
        Normals = new Vector[faces.Length];
        Points = new Vector[faces.Length];
    }

    /// <summary>A plane of the solid.</summary>
    /// <param name="Normal">Outward, in the body's axes.</param>
    /// <param name="Point">Any point of it.</param>
    /// <param name="Beside">Planes that bound the face.</param>
    /// <param name="Presses">False for what lies inside the body, and for planes that only bound.</param>
    private sealed record Face(Vector Normal, Vector Point, int[] Beside, bool Presses);

    public Vector[] Corners { get; }
    public Vector[] Normals { get; }
    public Vector[] Points { get; }
    public (int From, int To)[] Edges { get; }
    public int Faces => _faces.Length;

    public int[] Beside(int face) => _faces[face].Beside;

    public bool Presses(int face) => _faces[face].Presses;

    public bool IsUpright(int face) => _faces[face].Normal.Z == 0.0;

    /// <summary>Corners and planes of a body that stands at a place, its axes along x, y and z.</summary>
    public void Place(Vector at, Vector x, Vector y, Vector z)
    {
        Vector Turned(Vector own) => (own.X * x) + (own.Y * y) + (own.Z * z);
        for (int i = 0; i < _own.Length; i++)
        {
            Corners[i] = at + Turned(_own[i]);
        }
        for (int i = 0; i < _faces.Length; i++)
        {
            Normals[i] = Turned(_faces[i].Normal);
            Points[i] = at + Turned(_faces[i].Point);
        }
    }

    /// <summary>The solids of an outline: its prism, cut back to the lines where the ramps' slopes end, and a wedge for each ramp.</summary>
    /// <param name="plan">Corners, counter-clockwise, from the centre of mass [m].</param>
    /// <param name="faces">Face i runs from corner i to the next.</param>
    /// <param name="centre">Height of the centre of mass [m].</param>
    public static IReadOnlyList<OracleSolid> Of((double X, double Y)[] plan, IReadOnlyList<FaceSettings> faces, double centre)
    {
        int n = plan.Length;
        Vector[] outward = [.. Enumerable.Range(0, n).Select(i =>
        {
            (double dx, double dy) = (plan[(i + 1) % n].X - plan[i].X, plan[(i + 1) % n].Y - plan[i].Y);
            double length = Math.Sqrt((dx * dx) + (dy * dy));
            return new Vector(dy / length, -dx / length, 0.0);
        })];

        // a corner of the cut: on both its faces' lines, each moved inward by the plan length of its slope
        (double X, double Y)[] cut = [.. Enumerable.Range(0, n).Select(i =>
        {
            int before = (i + n - 1) % n;
            (Vector a, Vector b) = (outward[before], outward[i]);
            double ca = (a.X * plan[i].X) + (a.Y * plan[i].Y) - Run(faces[before]);
            double cb = (b.X * plan[i].X) + (b.Y * plan[i].Y) - Run(faces[i]);
            double det = (a.X * b.Y) - (a.Y * b.X);
            return (((ca * b.Y) - (cb * a.Y)) / det, ((a.X * cb) - (b.X * ca)) / det);
        })];
        FaceSettings[] upright = [.. faces.Where(f => f.RampAngle is null)];
        double low = (upright.Length > 0 ? upright : [.. faces]).Min(f => f.LowerEdge) - centre;
        double high = (upright.Length > 0 ? upright : [.. faces]).Max(f => f.UpperEdge) - centre;
        List<OracleSolid> solids = [Prism(plan.Length, cut, outward, faces, low, high, centre)];
        solids.AddRange(Enumerable.Range(0, n).Where(i => faces[i].RampAngle is not null).Select(i => Wedge(i, plan, cut, outward, faces, centre)));
        return solids;
    }

    private static double Run(FaceSettings face) => face.RampAngle is double angle ? (face.UpperEdge - face.LowerEdge) / Math.Tan(angle) : 0.0;

    private static OracleSolid Prism(int n, (double X, double Y)[] cut, Vector[] outward, IReadOnlyList<FaceSettings> faces, double low, double high, double centre)
    {
        var all = new List<Face>();
        var above = new List<Face>();
        int[] sides = [.. Enumerable.Range(0, n)];
        for (int i = 0; i < n; i++)
        {
            int under = n;
            bool presses = true;
            if (faces[i].RampAngle is not null)
            {
                // above the ramp's top only
                under = n + 2 + above.Count;
                above.Add(new Face(new Vector(0, 0, -1), new Vector(0, 0, faces[i].UpperEdge - centre), [], false));
                presses = faces[i].UpperEdge - centre < high;
            }
            all.Add(new Face(outward[i], new Vector(cut[i].X, cut[i].Y, 0.0), [(i + n - 1) % n, (i + 1) % n, under, n + 1], presses));
        }
        all.Add(new Face(new Vector(0, 0, -1), new Vector(0, 0, low), sides, true));
        all.Add(new Face(new Vector(0, 0, 1), new Vector(0, 0, high), sides, true));
        all.AddRange(above);
        return new OracleSolid(
            [.. cut.Select(c => new Vector(c.X, c.Y, low)), .. cut.Select(c => new Vector(c.X, c.Y, high))],
            [.. all],
            [
                .. sides.Where(i => faces[i].RampAngle is null).Select(i => (i, (i + 1) % n)),
                .. sides.Select(i => (n + i, n + ((i + 1) % n))),
                .. sides.Select(i => (i, n + i)),
            ]);
    }

    private static OracleSolid Wedge(int i, (double X, double Y)[] plan, (double X, double Y)[] cut, Vector[] outward, IReadOnlyList<FaceSettings> faces, double centre)
    {
        int n = plan.Length;
        int next = (i + 1) % n;
        double tip = faces[i].LowerEdge - centre;
        double top = faces[i].UpperEdge - centre;
        double angle = faces[i].RampAngle!.Value;
        Vector tip0 = new(plan[i].X, plan[i].Y, tip), tip1 = new(plan[next].X, plan[next].Y, tip);
        Vector back0 = new(cut[i].X, cut[i].Y, tip), back1 = new(cut[next].X, cut[next].Y, tip);
        Vector nose = outward[i];
        Vector slope = (Math.Sin(angle) * nose) + new Vector(0, 0, Math.Cos(angle));
        return new OracleSolid(
            [tip0, tip1, back0, back1, back0 with { Z = top }, back1 with { Z = top }],
            [
                new Face(slope, tip0, [1, 2, 3, 4], true),
                new Face(new Vector(0, 0, -1), tip0, [0, 2, 3, 4], true),
                new Face(-1.0 * nose, back0, [], false),
                new Face(Outward(back0, tip0), tip0, [0, 1, 2], faces[(i + n - 1) % n].RampAngle is null),
                new Face(Outward(tip1, back1), tip1, [0, 1, 2], faces[next].RampAngle is null),
            ],
            [(0, 1), (0, 2), (1, 3), (0, 4), (1, 5)]);
    }

    private static Vector Outward(Vector from, Vector to)
    {
        Vector n = new(to.Y - from.Y, from.X - to.X, 0.0);
        return (1.0 / n.Length) * n;
    }
}
