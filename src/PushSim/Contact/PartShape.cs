using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>A <see cref="ConvexPart"/> as numbers of the kernel.</summary>
internal sealed class PartShape<T> : INumbers<T>
    where T : struct, IReal<T>
{
    // Band of the faces that act, over the least overlap [1].
    private const double Band = 0.25;

    /// <summary>Corners from the centre of mass [m].</summary>
    public readonly T[] X, Y, Z;

    /// <summary>Outward normals of the planes [1], their offsets from the centre of mass [m].</summary>
    public readonly T[] NormalX, NormalY, NormalZ, Offset;

    /// <summary>Lengths of the edges [m].</summary>
    public readonly T[] Length;

    /// <summary>Which planes act, in pairs and one by one, which stand upright; planes beside each, in pairs; corners of the edges, edges in pairs.</summary>
    public readonly (int First, int Second)[] Acting;

    public readonly bool[] Acts, IsUpright;

    public readonly (int First, int Second)[][] Beside;

    public readonly (int From, int To)[] Edges;

    public readonly (int First, int Second)[] EdgePairs;

    public PartShape(ConvexPart part)
    {
        X = Aligned.Copy([.. part.Corners.Select(c => (T)c.X)]);
        Y = Aligned.Copy([.. part.Corners.Select(c => (T)c.Y)]);
        Z = Aligned.Copy([.. part.Corners.Select(c => (T)c.Z)]);
        NormalX = Aligned.Copy([.. part.Planes.Select(p => (T)p.X)]);
        NormalY = Aligned.Copy([.. part.Planes.Select(p => (T)p.Y)]);
        NormalZ = Aligned.Copy([.. part.Planes.Select(p => (T)p.Z)]);
        Offset = Aligned.Copy([.. part.Planes.Select(p => (T)p.Offset)]);
        Acting = [.. part.Acting];
        Acts = [.. part.Planes.Select((_, f) => part.Acting.Any(pair => pair.First == f || pair.Second == f))];
        IsUpright = [.. part.Planes.Select(p => p.IsUpright)];
        Beside = [.. part.Beside.Select(b => b.ToArray())];
        Edges = [.. part.Edges];
        EdgePairs = [.. part.EdgePairs];
        Length = Aligned.Copy([.. Edges.Select(e => (T)Distance(part.Corners[e.From], part.Corners[e.To]))]);
    }

    /// <summary>Number of corners.</summary>
    public int Count => X.Length;

    /// <summary>Overlap beyond which a face takes no part [m].</summary>
    /// <param name="least">Least overlap of all [m].</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Limit(T least) => (1.0 + Band) * least;

    /// <summary>Weighs the faces by how little they overlap, mirror partners first; returns the sum [m].</summary>
    /// <param name="least">Least overlap of all [m].</param>
    /// <param name="overlap">Overlap of each plane [m].</param>
    /// <param name="weight">Weight of each, not yet divided by the sum of all [m].</param>
    [MethodImpl(Kernel.Part)]
    public T Weigh(T least, T[] overlap, T[] weight)
    {
        T limit = Limit(least);
        T sum = 0.0;
        foreach ((int first, int second) in Acting)
        {
            T pair = T.Max(0.0, limit - overlap[first]);
            weight[first] = pair;
            if (second >= 0)
            {
                T other = T.Max(0.0, limit - overlap[second]);
                weight[second] = other;
                pair = pair + other;
            }

            sum = sum + pair;
        }

        return sum;
    }

    public void Show(NumberWalk<T> walk)
    {
        foreach (T[] numbers in (T[][])[X, Y, Z, NormalX, NormalY, NormalZ, Offset, Length])
        {
            walk.Take(numbers);
        }
    }

    private static double Distance((double X, double Y, double Z) a, (double X, double Y, double Z) b)
    {
        (double x, double y, double z) = (b.X - a.X, b.Y - a.Y, b.Z - a.Z);
        return Math.Sqrt(((x * x) + (y * y)) + (z * z));
    }
}
