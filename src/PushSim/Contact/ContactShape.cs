namespace PushSim.Contact;

/// <summary>A <see cref="ContactBody"/> as numbers of the kernel, per corner and per face.</summary>
internal sealed class ContactShape<T>
    where T : struct, IReal<T>
{
    /// <summary>Corners from the centre of mass [m].</summary>
    public readonly T[] X, Y;

    /// <summary>Middle of each face [m], its outward normal [1], half its length [m].</summary>
    public readonly T[] MiddleX, MiddleY, NormalX, NormalY, Half;

    /// <summary>Heights of each face's edges, robot level [m].</summary>
    public readonly T[] Lower, Upper;

    /// <summary>Which faces are ramps; sine, cosine, cotangent of their angles [1], plan length of their slopes [m].</summary>
    public readonly bool[] IsRamp;

    public readonly T[] RampSine, RampCosine, RampCotangent, RampLength;

    /// <summary>Distance of each face's line from the centre of mass [m].</summary>
    public readonly T[] Across;

    /// <summary>How far the outline reaches in any direction at least [m]; the longest slope, 0 without ramps [m].</summary>
    public T Inner, LongestRamp;

    /// <summary>Order of sums over the faces.</summary>
    public readonly (int First, int Second)[] Partners;

    public readonly int Count;

    public readonly bool HasRamp;

    /// <summary>Height of the centre of mass [m].</summary>
    public T CentreHeight;

    /// <summary>Distance of the farthest corner from the centre of mass [m]; greatest height of anything [m].</summary>
    public readonly double Radius, Size;

    public ContactShape(ContactBody body)
    {
        int n = body.Corners.Count;
        Count = n;
        HasRamp = body.HasRamp;
        Partners = [.. body.Partners];
        CentreHeight = body.CentreHeight;
        Radius = body.Corners.Max(c => Math.Sqrt((c.X * c.X) + (c.Y * c.Y)));
        Size = Math.Abs(body.CentreHeight) + body.Faces.Max(f => Math.Max(Math.Abs(f.LowerEdge), Math.Abs(f.UpperEdge)));
        X = Aligned.Copy([.. body.Corners.Select(c => (T)c.X)]);
        Y = Aligned.Copy([.. body.Corners.Select(c => (T)c.Y)]);
        Lower = Aligned.Copy([.. body.Faces.Select(f => (T)f.LowerEdge)]);
        Upper = Aligned.Copy([.. body.Faces.Select(f => (T)f.UpperEdge)]);
        IsRamp = [.. body.Faces.Select(f => f.RampAngle is not null)];
        RampSine = Aligned.Copy([.. body.Faces.Select(f => (T)Math.Sin(f.RampAngle ?? 1.0))]);
        RampCosine = Aligned.Copy([.. body.Faces.Select(f => (T)Math.Cos(f.RampAngle ?? 1.0))]);
        RampCotangent = Aligned.Copy([.. body.Faces.Select(f => (T)(1.0 / Math.Tan(f.RampAngle ?? 1.0)))]);
        RampLength = Aligned.Copy([.. body.Faces.Select(f => (T)((f.UpperEdge - f.LowerEdge) / Math.Tan(f.RampAngle ?? 1.0)))]);
        MiddleX = Aligned.Array<T>(n);
        MiddleY = Aligned.Array<T>(n);
        NormalX = Aligned.Array<T>(n);
        NormalY = Aligned.Array<T>(n);
        Half = Aligned.Array<T>(n);
        Across = Aligned.Array<T>(n);
        double inner = double.MaxValue;
        for (int i = 0; i < n; i++)
        {
            (double x0, double y0) = body.Corners[i];
            (double x1, double y1) = body.Corners[(i + 1) % n];
            double length = Math.Sqrt(((x1 - x0) * (x1 - x0)) + ((y1 - y0) * (y1 - y0)));
            MiddleX[i] = 0.5 * (x0 + x1);
            MiddleY[i] = 0.5 * (y0 + y1);
            NormalX[i] = (y1 - y0) / length;
            NormalY[i] = (x0 - x1) / length;
            Half[i] = 0.5 * length;
            double across = ((x0 * y1) - (x1 * y0)) / length;
            Across[i] = across;
            inner = Math.Min(inner, across);
        }

        // a centre of mass beside the outline has no circle around it inside
        Inner = inner > 0.0 ? inner : -Radius;
        LongestRamp = body.Faces.Max(f => f.RampAngle is double angle ? (f.UpperEdge - f.LowerEdge) / Math.Tan(angle) : 0.0);
    }
}
