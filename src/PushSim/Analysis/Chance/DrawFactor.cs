namespace PushSim.Analysis.Chance;

/// <summary>One cause of error that stands by itself. A drawn value is made of one or several; values that share a cause go together.</summary>
public sealed class DrawFactor
{
    /// <summary>From this number on a match is one of an earlier number fought again: number n + t Again is the t-th time more of match n. What is unknown once stays, what varies each time is drawn anew [1].</summary>
    public const long Again = 1L << 40;

    // Causes that are drawn anew by themselves take those of a match so far off that nobody runs it [1].
    private const long FarOff = 1L << 54;

    private readonly ulong _within;
    private readonly ulong _order;

    /// <summary>A cause.</summary>
    /// <param name="name">Its name; causes of the same name are the same.</param>
    /// <param name="weight">Weight of its normal score; the squares of a value's weights add up to 1 [1].</param>
    /// <param name="isEachTime">Whether it is another one in each match.</param>
    /// <param name="group">Name under which several are drawn anew together; null: its own.</param>
    public DrawFactor(string name, double weight, bool isEachTime = false, string? group = null)
    {
        (Name, Weight, IsEachTime, Group) = (name, weight, isEachTime, group ?? name);
        _within = Philox.NumberOf(name);
        _order = Philox.NumberOf(name + "\norder");
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Weight of its normal score [1].</summary>
    public double Weight { get; }

    /// <summary>Whether it is another one in each match; else it is unknown once, and the same each time that a pair of robots meets.</summary>
    public bool IsEachTime { get; }

    /// <summary>Name under which several are drawn anew together.</summary>
    public string Group { get; }

    /// <summary>Its number 0..1 in a match [1].</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="match">Number of the match.</param>
    /// <param name="redrawn">Group that is drawn anew; null for none.</param>
    public double Uniform(ulong seed, long match, string? redrawn = null)
    {
        long number = IsEachTime ? match : match & (Again - 1);
        return LatinBlock.Uniform(seed, redrawn is not null && Group == redrawn ? number + FarOff : number, _order, _within);
    }

    /// <summary>The same cause with another weight.</summary>
    /// <param name="weight">The weight [1].</param>
    public DrawFactor Weighing(double weight) => new(Name, weight, IsEachTime, Group);
}
