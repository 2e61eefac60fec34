namespace PushSim.Numerics;

/// <summary>An embedded additive Runge-Kutta pair: an explicit half A^E for the soft components and a diagonally implicit half A^I
/// (first stage explicit, one diagonal coefficient gamma, stiffly accurate: its last row is b) for the stiff ones, with common weights b, bhat and nodes c.
/// Immutable. A new method is one file with data and one entry in <see cref="All"/>.
/// Source of the form: C. A. Kennedy, M. H. Carpenter, Applied Numerical Mathematics 44 (2003) 139-181, section 2.</summary>
public sealed class AdditiveTableau
{
    private readonly double[] _explicit;
    private readonly double[] _implicit;
    private readonly double[] _weights;
    private readonly double[] _embeddedWeights;
    private readonly double[] _nodes;

    internal AdditiveTableau(
        string name,
        int order,
        int embeddedOrder,
        double[][] explicitRows,
        double[][] implicitRows,
        double[] embeddedWeights,
        double[] nodes)
    {
        Name = name;
        Order = order;
        EmbeddedOrder = embeddedOrder;
        Stages = nodes.Length;
        _explicit = Square(explicitRows);
        _implicit = Square(implicitRows);
        _weights = [.. implicitRows[^1]];
        _embeddedWeights = [.. embeddedWeights];
        _nodes = [.. nodes];
    }

    /// <summary>Every pair the engine knows, by rising order.</summary>
    public static IReadOnlyList<AdditiveTableau> All { get; } =
        Array.AsReadOnly([Ark32.Create(), Ark43.Create(), Ark54.Create()]);

    /// <summary>Short name, for example "ARK4(3)".</summary>
    public string Name { get; }

    /// <summary>Order p of the advancing weights b [1].</summary>
    public int Order { get; }

    /// <summary>Order of the embedded weights bhat [1].</summary>
    public int EmbeddedOrder { get; }

    /// <summary>Number of stages s [1].</summary>
    public int Stages { get; }

    /// <summary>Explicit half, s by s, row by row, zero on and above the diagonal [1].</summary>
    public ReadOnlySpan<double> AE => _explicit;

    /// <summary>Implicit half, s by s, row by row, gamma on the diagonal but for the first row [1].</summary>
    public ReadOnlySpan<double> AI => _implicit;

    /// <summary>Advancing weights b_i of both halves [1].</summary>
    public ReadOnlySpan<double> B => _weights;

    /// <summary>Embedded weights bhat_i of both halves [1].</summary>
    public ReadOnlySpan<double> BHat => _embeddedWeights;

    /// <summary>Nodes c_i of both halves, as fractions of the step [1].</summary>
    public ReadOnlySpan<double> C => _nodes;

    /// <summary>Diagonal coefficient gamma of the implicit half [1].</summary>
    public double Gamma => _implicit[^1];

    /// <summary>Finds a pair by its name, whatever the case.</summary>
    /// <exception cref="ArgumentException">No pair has this name.</exception>
    public static AdditiveTableau ByName(string name)
    {
        foreach (AdditiveTableau tableau in All)
        {
            if (string.Equals(tableau.Name, name, StringComparison.OrdinalIgnoreCase))
            {
                return tableau;
            }
        }

        string known = string.Join(", ", All.Select(tableau => tableau.Name));
        throw new ArgumentException($"no integration method is called '{name}'; known: {known}", nameof(name));
    }

    /// <inheritdoc/>
    public override string ToString() => Name;

    private static double[] Square(double[][] rows)
    {
        double[] square = new double[rows.Length * rows.Length];
        for (int i = 0; i < rows.Length; i++)
        {
            rows[i].CopyTo(square, i * rows.Length);
        }

        return square;
    }
}
