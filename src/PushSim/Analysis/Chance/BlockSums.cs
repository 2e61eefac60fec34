using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Chance;

/// <summary>
/// Counts of two kinds of hits by blocks of draws (<see cref="LatinBlock"/>), and how many free draws tell as much. Blocks do not hang on each other, so the scatter of their means gives the
/// error of a share, whatever happens within them. A share of n matches is then as sure as one of f n free draws, f = (plain variance over that of the blocks) (z/t)^2, with which any
/// interval of a share can be taken: Korn and Graubard, Survey Methodology 24:193, 1998 (from memory). Four bytes a block, in any order of numbers.
/// </summary>
public sealed class BlockSums
{
    /// <summary>Whole blocks from which on their scatter counts; below, matches count as free draws, which is wider [1].</summary>
    public const int LeastBlocks = 16;

    // Hits, and matches without one, below which blocks hold mostly none or one: free draws then, too [1].
    private const long LeastHits = 32;

    // So many times more than free draws are never claimed: the scatter of a few blocks may be nothing by luck [1].
    private const double MostEffective = 10.0;

    // Numbers, matches that did not fail, hits of the one and of the other in one word [1].
    private const int Field = 6;
    private const int Mask = (1 << Field) - 1;

    private int[] _blocks = [];
    private double _n;
    private double _a;
    private double _b;
    private double _nn;
    private double _an;
    private double _bn;
    private double _aa;
    private double _ab;
    private double _bb;

    /// <summary>Whole blocks [1].</summary>
    public int Blocks { get; private set; }

    /// <summary>Counts a match.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="counts">Whether it did not fail.</param>
    /// <param name="isFirst">Whether it is a hit of the first kind.</param>
    /// <param name="isSecond">Whether it is one of the second kind.</param>
    public void Add(long number, bool counts, bool isFirst, bool isSecond)
    {
        if (number < 0 || number >= DrawFactor.Again)
        {
            return;
        }

        int block = (int)LatinBlock.Of(number);
        if (block >= _blocks.Length)
        {
            Array.Resize(ref _blocks, Math.Max(block + 1, 2 * _blocks.Length));
        }

        int word = _blocks[block];
        if ((word & Mask) == LatinBlock.Size)
        {
            return;
        }

        word += 1 + (counts ? 1 << Field : 0) + (isFirst ? 1 << (2 * Field) : 0) + (isSecond ? 1 << (3 * Field) : 0);
        _blocks[block] = word;
        if ((word & Mask) == LatinBlock.Size)
        {
            Close((word >> Field) & Mask, (word >> (2 * Field)) & Mask, (word >> (3 * Field)) & Mask);
        }
    }

    /// <summary>How many free draws one match is worth for a share of hits, those of the two kinds weighed [1].</summary>
    /// <param name="first">Weight of the first kind [1].</param>
    /// <param name="second">Weight of the second kind [1].</param>
    public double Worth(double first, double second)
    {
        double hits = (first * first * _a) + (second * second * _b);
        if (Blocks < LeastBlocks || hits < LeastHits || (first * second >= 0.0 && _n - hits < LeastHits))
        {
            return 1.0;
        }

        double mean = ((first * _a) + (second * _b)) / _n;
        double plain = (hits / _n) - (mean * mean);
        double xx = (first * first * _aa) + (2.0 * first * second * _ab) + (second * second * _bb);
        double xn = (first * _an) + (second * _bn);
        double scatter = Math.Max(0.0, xx - (2.0 * mean * xn) + (mean * mean * _nn)) / (Blocks - 1);
        double ratio = ShareInterval.Z / StudentT.Factor(0.95, Blocks - 1);
        double least = _n * plain * ratio * ratio / MostEffective;
        return plain <= 0.0 ? 1.0 : _n * plain * ratio * ratio / Math.Max(Blocks * scatter, least);
    }

    private void Close(double n, double a, double b)
    {
        Blocks++;
        (_n, _a, _b) = (_n + n, _a + a, _b + b);
        (_nn, _an, _bn) = (_nn + (n * n), _an + (a * n), _bn + (b * n));
        (_aa, _ab, _bb) = (_aa + (a * a), _ab + (a * b), _bb + (b * b));
    }
}
