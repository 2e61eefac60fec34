using MathNet.Numerics.Distributions;

namespace PushSim.Analysis.Chance;

/// <summary>A quantity that is drawn: its normal score is the weighted sum of those of the causes of its error. Parts of one block have u = sqrt(1 - s) u_shared + sqrt(s) u_own, s the own share.</summary>
/// <param name="Key">Its path; quantities with the same key share their draw.</param>
/// <param name="Part">The part that has an error of its own; empty for none.</param>
/// <param name="OwnShare">Share of the variance that is the part's own, 0..1 [1].</param>
/// <param name="Middle">Middle value [unit of the quantity].</param>
/// <param name="HalfWidth">Tolerance, above 0 [unit of the quantity].</param>
/// <param name="Shape">How values lie about the middle.</param>
/// <param name="Least">Draws stop here [unit of the quantity].</param>
/// <param name="Most">Draws stop here [unit of the quantity].</param>
public sealed record DrawnQuantity(string Key, string Part, double OwnShare, double Middle, double HalfWidth, DrawShape Shape, double Least, double Most)
{
    /// <summary>Number of the scheme by which seed, number and quantity give a draw; another scheme has another number, and matches of both are never mixed [1].</summary>
    public const int Scheme = 2;

    /// <summary>Name for lists: the key, and the part if it has one.</summary>
    public string Name => NameOf(Key, Part);

    /// <summary>The causes of its error, the squares of their weights adding up to 1.</summary>
    public IReadOnlyList<DrawFactor> Factors { get; init; } = OfParts([new DrawFactor(Key, 1.0)], Key, Part, OwnShare);

    /// <summary>The causes where a part of a block has an error of its own beside those of its block.</summary>
    /// <param name="block">Causes of the block.</param>
    /// <param name="key">Path of the quantity.</param>
    /// <param name="part">The part; empty for none.</param>
    /// <param name="ownShare">Share of the variance that is the part's own, 0..1 [1].</param>
    public static IReadOnlyList<DrawFactor> OfParts(IReadOnlyList<DrawFactor> block, string key, string part, double ownShare) => ownShare <= 0.0 || part.Length == 0 ? block :
    [
        .. block.Where(_ => ownShare < 1.0).Select(f => f.Weighing(f.Weight * Math.Sqrt(1.0 - ownShare))),
        new DrawFactor(NameOf(key, part), Math.Sqrt(ownShare), block[0].IsEachTime, key),
    ];

    /// <summary>Its value in a match [unit of the quantity].</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="match">Number of the match.</param>
    /// <param name="redrawn">Causes that are drawn anew; null for none.</param>
    public double Draw(ulong seed, long match, string? redrawn = null)
    {
        if (Factors is [{ Weight: 1.0 } only])
        {
            double u = only.Uniform(seed, match, redrawn);
            return Value(IsByScore ? NormalQuantile.Of(u) : u);
        }

        double z = 0.0;
        foreach (DrawFactor f in Factors)
        {
            z += f.Weight * NormalQuantile.Of(f.Uniform(seed, match, redrawn));
        }

        return Value(IsByScore ? z : Normal.CDF(0.0, 1.0, z));
    }

    private static string NameOf(string key, string part) => part.Length == 0 ? key : $"{key}, {part}";

    private bool IsByScore => Shape is DrawShape.Normal or DrawShape.Factor;

    // of a normal score, or of an even number in 0..1
    private double Value(double score)
    {
        if (Shape == DrawShape.Factor)
        {
            return Math.Clamp(Middle * Math.Pow(1.0 + (HalfWidth / Math.Abs(Middle)), 0.5 * score), Least, Most);
        }

        double offset = Shape switch
        {
            DrawShape.Normal => 0.5 * score,
            DrawShape.Uniform => (2.0 * score) - 1.0,
            _ => score < 0.5 ? Math.Sqrt(2.0 * score) - 1.0 : 1.0 - Math.Sqrt(2.0 * (1.0 - score)),
        };
        return Math.Clamp(Middle + (HalfWidth * offset), Least, Most);
    }
}
