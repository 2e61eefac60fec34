namespace PushSim.Contact;

/// <summary>Makes the convex parts of an outline: an upright prism, and before it a wedge for each ramp, where the prism is cut back to the
/// line at which the slope ends. Where a wedge and the prism meet, inner faces and edges are left out; what of the prism's front stands above a ramp's top acts.
/// Upright faces of one outline share one height: lowest lower edge, highest upper edge.</summary>
internal sealed class PartBuilder
{
    private readonly IReadOnlyList<(double X, double Y)> _corners;
    private readonly IReadOnlyList<FaceSettings> _faces;
    private readonly (double X, double Y)[] _cut;
    private readonly bool _aroundCorner;
    private readonly double _centre, _low, _high;
    private readonly int _n;

    private PartBuilder(IReadOnlyList<(double X, double Y)> corners, IReadOnlyList<FaceSettings> faces, bool aroundCorner, double centreHeight)
    {
        (_corners, _faces, _aroundCorner, _centre, _n) = (corners, faces, aroundCorner, centreHeight, corners.Count);
        FaceSettings[] upright = [.. faces.Where(f => f.RampAngle is null)];
        FaceSettings[] heights = upright.Length > 0 ? upright : [.. faces];
        (_low, _high) = (heights.Min(f => f.LowerEdge), heights.Max(f => f.UpperEdge));
        _cut = Cut(corners, faces);
    }

    /// <summary>The prism, then the wedges in the order of their faces, with the partner of each part.</summary>
    /// <param name="corners">Corners from the centre of mass, canonical order [m].</param>
    /// <param name="faces">Face i runs from corner i to the next.</param>
    /// <param name="aroundCorner">Whether the mirror's axis runs through a corner in front: then face i mirrors n-1-i, else n-i.</param>
    /// <param name="centreHeight">Height of the centre of mass [m].</param>
    public static IReadOnlyList<(ConvexPart Part, int Partner)> Parts(
        IReadOnlyList<(double X, double Y)> corners, IReadOnlyList<FaceSettings> faces, bool aroundCorner, double centreHeight)
    {
        PartBuilder b = new(corners, faces, aroundCorner, centreHeight);
        int[] ramps = [.. Enumerable.Range(0, b._n).Where(i => faces[i].RampAngle is not null)];
        List<(ConvexPart, int)> parts = [(b.Prism(), 0)];
        foreach (int i in ramps)
        {
            int partner = Array.IndexOf(ramps, b.FacePartner(i));
            parts.Add((b.Wedge(i), partner < 0 ? parts.Count : 1 + partner));
        }

        return parts;
    }

    /// <summary>Corners of what an outline's ramps leave of it [m]; null where a ramp runs through the body.</summary>
    public static (double X, double Y)[]? CutBack(IReadOnlyList<(double X, double Y)> corners, IReadOnlyList<FaceSettings> faces)
    {
        int n = corners.Count;
        (double X, double Y)[] cut = Cut(corners, faces);
        for (int i = 0; i < n; i++)
        {
            (double x, double y) = Along(corners, i);
            double left = ((cut[(i + 1) % n].X - cut[i].X) * x) + ((cut[(i + 1) % n].Y - cut[i].Y) * y);
            if (!(left > 0.0))
            {
                return null;
            }
        }

        return cut;
    }

    private static (double X, double Y) Along(IReadOnlyList<(double X, double Y)> corners, int face)
    {
        (double x0, double y0) = corners[face];
        (double x1, double y1) = corners[(face + 1) % corners.Count];
        double length = Math.Sqrt(((x1 - x0) * (x1 - x0)) + ((y1 - y0) * (y1 - y0)));
        return ((x1 - x0) / length, (y1 - y0) / length);
    }

    private static double Inset(FaceSettings face) => face.RampAngle is double angle ? (face.UpperEdge - face.LowerEdge) / Math.Tan(angle) : 0.0;

    // each face's line moved inward by the plan length of its ramp; a corner between two upright faces stays as it is given
    private static (double X, double Y)[] Cut(IReadOnlyList<(double X, double Y)> corners, IReadOnlyList<FaceSettings> faces)
    {
        int n = corners.Count;
        return [.. Enumerable.Range(0, n).Select(i =>
        {
            int before = (i + n - 1) % n;
            (double fromBefore, double fromHere) = (Inset(faces[before]), Inset(faces[i]));
            if (fromBefore == 0.0 && fromHere == 0.0)
            {
                return corners[i];
            }

            // a point is moved by a along the line before and b along the next: their inward normals' distances are the insets
            (double ax, double ay) = Along(corners, before);
            (double bx, double by) = Along(corners, i);
            double cross = (ax * by) - (ay * bx);
            double alongNext = fromBefore / cross;
            double alongBefore = -fromHere / cross;
            return (corners[i].X + ((alongNext * bx) + (alongBefore * ax)), corners[i].Y + ((alongNext * by) + (alongBefore * ay)));
        })];
    }

    private int FacePartner(int face) => _aroundCorner ? _n - 1 - face : (_n - face) % _n;

    private int CornerPartner(int corner) => _aroundCorner ? (_n - corner) % _n : (_n - corner + 1) % _n;

    // the same to the bit whichever comes first
    private static (double X, double Y, double Z) Middle((double X, double Y) a, (double X, double Y) b, double z) => (0.5 * (a.X + b.X), 0.5 * (a.Y + b.Y), z);

    private (double X, double Y, double Z) Outward(int face)
    {
        (double x, double y) = Along(_corners, face);
        return (y, -x, 0.0);
    }

    private ConvexPart Prism()
    {
        int bottom = _n;
        int top = _n + 1;
        double low = _low - _centre;
        double high = _high - _centre;
        List<PartPlane> planes = [];
        for (int i = 0; i < _n; i++)
        {
            planes.Add(PartPlane.Through(Outward(i), Middle(_cut[i], _cut[(i + 1) % _n], 0.0)));
        }

        planes.Add(new PartPlane(0.0, 0.0, -1.0, -low));
        planes.Add(new PartPlane(0.0, 0.0, 1.0, high));
        int[] sides = [.. Enumerable.Range(0, _n)];
        (int, int)[] ring = ConvexPart.Pairs(sides, FacePartner);
        List<IReadOnlyList<(int, int)>> beside = [];
        for (int i = 0; i < _n; i++)
        {
            int under = bottom;
            if (_faces[i].RampAngle is not null)
            {
                // only what stands above the ramp's top
                under = planes.Count;
                planes.Add(new PartPlane(0.0, 0.0, -1.0, -(_faces[i].UpperEdge - _centre)));
            }

            beside.Add([((i + _n - 1) % _n, (i + 1) % _n), (under, top)]);
        }

        beside.Add(ring);
        beside.Add(ring);
        while (beside.Count < planes.Count)
        {
            beside.Add([]);
        }

        bool Acts(int face) => face >= _n || _faces[face].RampAngle is null || _faces[face].UpperEdge < _high;
        (int From, int To)[] edges =
        [
            .. sides.Select(i => (i, (i + 1) % _n)),
            .. sides.Select(i => (_n + i, _n + ((i + 1) % _n))),
            .. sides.Select(c => (c, _n + c)),
        ];
        int Partner(int e) => e < _n ? FacePartner(e) : e < 2 * _n ? _n + FacePartner(e - _n) : (2 * _n) + CornerPartner(e - (2 * _n));

        // lower edges behind a ramp are inside
        bool IsFelt(int e) => e >= _n || _faces[e].RampAngle is null;
        return Build(
            [.. _cut.Select(c => (c.X, c.Y, low)), .. _cut.Select(c => (c.X, c.Y, high))],
            planes,
            [.. ConvexPart.Pairs(sides, FacePartner).SelectMany(p => Only(p, Acts)), (bottom, -1), (top, -1)],
            beside,
            edges,
            [.. ConvexPart.Pairs(Enumerable.Range(0, 3 * _n), Partner).SelectMany(p => Only(p, IsFelt))]);
    }

    private ConvexPart Wedge(int face)
    {
        const int Slope = 0, Bottom = 1, Back = 2, First = 3, Second = 4;
        FaceSettings f = _faces[face];
        int next = (face + 1) % _n;
        double tip = f.LowerEdge - _centre;
        double top = f.UpperEdge - _centre;
        (double X, double Y, double Z) nose = Outward(face);
        (double sine, double cosine) = Math.SinCos(f.RampAngle!.Value);
        ((double X, double Y) tip0, (double X, double Y) tip1) = (_corners[face], _corners[next]);
        ((double X, double Y) back0, (double X, double Y) back1) = (_cut[face], _cut[next]);
        (double X, double Y, double Z) Side((double X, double Y) from, (double X, double Y) to) => (to.Y - from.Y, from.X - to.X, 0.0);
        PartPlane[] planes =
        [
            PartPlane.Through((sine * nose.X, sine * nose.Y, cosine), Middle(tip0, tip1, tip)),
            new(0.0, 0.0, -1.0, -tip),
            PartPlane.Through((-nose.X, -nose.Y, 0.0), Middle(back0, back1, 0.0)),
            PartPlane.Through(Side(back0, tip0), (tip0.X, tip0.Y, 0.0)),
            PartPlane.Through(Side(tip1, back1), (tip1.X, tip1.Y, 0.0)),
        ];
        bool Acts(int p) => p == First ? _faces[(face + _n - 1) % _n].RampAngle is null : p != Second || _faces[next].RampAngle is null;
        int Mirror(int p) => p == First ? Second : p == Second ? First : p;
        return Build(
            [(tip0.X, tip0.Y, tip), (tip1.X, tip1.Y, tip), (back0.X, back0.Y, tip), (back1.X, back1.Y, tip), (back0.X, back0.Y, top), (back1.X, back1.Y, top)],
            planes,
            [(Slope, -1), (Bottom, -1), .. Only((First, Mirror(First)), Acts)],
            [[(Bottom, Back), (First, Second)], [(Slope, Back), (First, Second)], [], [(Slope, -1), (Bottom, -1), (Back, -1)], [(Slope, -1), (Bottom, -1), (Back, -1)]],
            [(0, 1), (0, 2), (1, 3), (0, 4), (1, 5)],
            [(0, -1), (1, 2), (3, 4)]);
    }

    // What is left of a pair of which one or both are left out.
    private static IEnumerable<(int First, int Second)> Only((int First, int Second) pair, Func<int, bool> stays)
    {
        bool first = stays(pair.First);
        bool second = pair.Second >= 0 && stays(pair.Second);
        if (first || second)
        {
            yield return first && second ? pair : (first ? pair.First : pair.Second, -1);
        }
    }

    private static ConvexPart Build(
        IReadOnlyList<(double X, double Y, double Z)> corners,
        IReadOnlyList<PartPlane> planes,
        IReadOnlyList<(int First, int Second)> acting,
        IReadOnlyList<IReadOnlyList<(int First, int Second)>> beside,
        IReadOnlyList<(int From, int To)> edges,
        IReadOnlyList<(int First, int Second)> pairs) =>
        new() { Corners = corners, Planes = planes, Acting = acting, Beside = beside, Edges = edges, EdgePairs = pairs };
}
