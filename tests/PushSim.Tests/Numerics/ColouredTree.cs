using PushSim.Numerics;

namespace PushSim.Tests.Numerics;

/// <summary>
/// Rooted tree with edges of two colours, written as its children: E(...) or I(...) each. "" is the lone root.
/// Its condition is sum_i b_i Phi_i = 1/gamma, with Phi of a node the product over children of (A^colour Phi_child)_i.
/// </summary>
public sealed record ColouredTree(IReadOnlyList<(char Colour, ColouredTree Tree)> Children)
{
    public int Size => 1 + Children.Sum(child => child.Tree.Size);

    public double Density => Children.Aggregate((double)Size, (product, child) => product * child.Tree.Density);

    public static IReadOnlyList<ColouredTree> OfSize(int size)
    {
        SortedDictionary<string, ColouredTree> found = new(StringComparer.Ordinal);
        if (size == 1)
        {
            return [new ColouredTree([])];
        }

        // Graft one branch on every smaller tree; the text form, with sorted children, removes the doubles.
        for (int branch = 1; branch < size; branch++)
        {
            foreach (ColouredTree trunk in OfSize(size - branch))
            {
                foreach (ColouredTree graft in OfSize(branch))
                {
                    foreach (char colour in "EI")
                    {
                        ColouredTree tree = Sorted([.. trunk.Children, (colour, graft)]);
                        found[tree.ToString()] = tree;
                    }
                }
            }
        }

        return [.. found.Values];
    }

    public static ColouredTree Parse(string text)
    {
        int place = 0;
        return Parse(text, ref place);
    }

    public double Defect(AdditiveTableau t, ReadOnlySpan<double> weights)
    {
        double[] phi = Phi(t);
        double sum = 0.0;
        for (int i = 0; i < t.Stages; i++)
        {
            sum = Math.FusedMultiplyAdd(weights[i], phi[i], sum);
        }

        return sum - (1.0 / Density);
    }

    public override string ToString() => string.Concat(Children.Select(child => $"{child.Colour}({child.Tree})"));

    private static ColouredTree Sorted(IEnumerable<(char Colour, ColouredTree Tree)> children) =>
        new([.. children.OrderBy(child => $"{child.Colour}({child.Tree})", StringComparer.Ordinal)]);

    private static ColouredTree Parse(string text, ref int place)
    {
        List<(char, ColouredTree)> children = [];
        while (place < text.Length && text[place] != ')')
        {
            char colour = text[place];
            place += 2;
            children.Add((colour, Parse(text, ref place)));
            place++;
        }

        return new ColouredTree(children);
    }

    private double[] Phi(AdditiveTableau t)
    {
        double[] product = [.. Enumerable.Repeat(1.0, t.Stages)];
        foreach ((char colour, ColouredTree tree) in Children)
        {
            ReadOnlySpan<double> a = colour == 'E' ? t.AE : t.AI;
            double[] inner = tree.Phi(t);
            for (int i = 0; i < t.Stages; i++)
            {
                double sum = 0.0;
                for (int j = 0; j < t.Stages; j++)
                {
                    sum = Math.FusedMultiplyAdd(a[(i * t.Stages) + j], inner[j], sum);
                }

                product[i] *= sum;
            }
        }

        return product;
    }
}
