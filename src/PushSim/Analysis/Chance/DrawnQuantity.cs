using MathNet.Numerics.Distributions;

namespace PushSim.Analysis.Chance;

/// <summary>A quantity that is drawn for each match. Parts of one block have u = sqrt(1 - s) u_shared + sqrt(s) u_own in normal scores, s the own share.</summary>
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
    public const int Scheme = 1;

    private readonly ulong _shared = Philox.NumberOf(Key);
    private readonly ulong _own = Philox.NumberOf(Key + "\n" + Part);

    /// <summary>Name for lists: the key, and the part if it has one.</summary>
    public string Name => Part.Length == 0 ? Key : $"{Key}, {Part}";

    /// <summary>Its value in a match [unit of the quantity].</summary>
    public double Draw(ulong seed, long match)
    {
        double u = Philox.Uniform(seed, match, _shared);
        if (OwnShare <= 0.0 || Part.Length == 0)
        {
            return Value(Shape == DrawShape.Normal ? NormalQuantile.Of(u) : u);
        }

        double z = (Math.Sqrt(1.0 - OwnShare) * NormalQuantile.Of(u)) + (Math.Sqrt(OwnShare) * NormalQuantile.Of(Philox.Uniform(seed, match, _own)));
        return Value(Shape == DrawShape.Normal ? z : Normal.CDF(0.0, 1.0, z));
    }

    // of a normal score, or of an even number in 0..1
    private double Value(double score)
    {
        double offset = Shape switch
        {
            DrawShape.Normal => 0.5 * score,
            DrawShape.Uniform => (2.0 * score) - 1.0,
            _ => score < 0.5 ? Math.Sqrt(2.0 * score) - 1.0 : 1.0 - Math.Sqrt(2.0 * (1.0 - score)),
        };
        return Math.Clamp(Middle + (HalfWidth * offset), Least, Most);
    }
}
