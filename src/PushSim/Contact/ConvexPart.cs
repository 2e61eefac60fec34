namespace PushSim.Contact;

/// <summary>A convex solid of a body, about the body's centre of mass: corners, planes that bound it, edges that others can feel. What
/// is listed in pairs is summed in pairs: mirror partners first, so that the mirror image of a contact is the mirror image to the last bit.</summary>
internal sealed class ConvexPart
{
    /// <summary>Corners, x forward, y left, z up from the centre of mass [m].</summary>
    public required IReadOnlyList<(double X, double Y, double Z)> Corners { get; init; }

    /// <summary>Planes of the faces.</summary>
    public required IReadOnlyList<PartPlane> Planes { get; init; }

    /// <summary>Pairs of planes that act; a plane without partner has -1.</summary>
    public required IReadOnlyList<(int First, int Second)> Acting { get; init; }

    /// <summary>Per plane that acts, pairs of the planes beside it, which bound the face; empty for one that never acts.</summary>
    public required IReadOnlyList<IReadOnlyList<(int First, int Second)>> Beside { get; init; }

    /// <summary>Corners of each edge that can be felt.</summary>
    public required IReadOnlyList<(int From, int To)> Edges { get; init; }

    /// <summary>Pairs of edges; an edge without partner has -1.</summary>
    public required IReadOnlyList<(int First, int Second)> EdgePairs { get; init; }

    /// <summary>Writes out what is no number of it.</summary>
    public void Describe(List<int> list)
    {
        list.Add(Corners.Count);
        list.Add(Planes.Count);
        for (int f = 0; f < Planes.Count; f++)
        {
            list.Add(Planes[f].IsUpright ? 1 : 0);
            Describe(list, Beside[f]);
        }

        Describe(list, Acting);
        Describe(list, Edges);
        Describe(list, EdgePairs);
    }

    private static void Describe(List<int> list, IReadOnlyList<(int First, int Second)> pairs)
    {
        list.Add(pairs.Count);
        foreach ((int first, int second) in pairs)
        {
            list.Add(first);
            list.Add(second);
        }
    }

    /// <summary>Pairs of mirror partners of things that are numbered from 0.</summary>
    /// <param name="items">The things.</param>
    /// <param name="partner">The partner of each; itself where it has none.</param>
    public static (int First, int Second)[] Pairs(IEnumerable<int> items, Func<int, int> partner) =>
        [.. items.Where(i => partner(i) >= i).Select(i => (i, partner(i) == i ? -1 : partner(i)))];
}
