namespace PushSim.Analysis.Chance;

/// <summary>
/// Numbers 0..1 in blocks of 32: of the 32 numbers of a block each lies in another of 32 equal parts of 0..1, in an order that hangs on seed, block and quantity alone. Any number comes by
/// itself, and the mean over a block varies less than that of as many free draws, by what the quantities do one by one. McKay, Beckman and Conover, Technometrics 21:239, 1979; that it
/// never varies noticeably more: Owen, Ann. Statist. 25:1541, 1997 (both from memory).
/// </summary>
public static class LatinBlock
{
    /// <summary>Numbers in a block [1].</summary>
    public const int Size = 32;

    private const int Bits = 5;

    // Philox gives four words at a time [1].
    private const int Calls = Size / 4;

    private const double LargestBelowOne = 1.0 - (1.0 / 9007199254740992.0);

    /// <summary>Block of a number [1].</summary>
    public static long Of(long number) => number >> Bits;

    /// <summary>The number 0..1 of a match, neither 0 nor 1 [1].</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="number">Number of the match, from 0.</param>
    /// <param name="order">Number of the quantity for the order within the block, see <see cref="Philox.NumberOf"/>.</param>
    /// <param name="within">Another number of the quantity for the place within its part.</param>
    public static double Uniform(ulong seed, long number, ulong order, ulong within)
    {
        Span<uint> words = stackalloc uint[Size];
        long first = Of(number) * Calls;
        for (int i = 0; i < Calls; i++)
        {
            (words[4 * i], words[(4 * i) + 1], words[(4 * i) + 2], words[(4 * i) + 3]) = Philox.Words(seed, first + i, order);
        }

        // the place of the match's own word among the 32 in their order
        int place = (int)(number & (Size - 1));
        uint own = words[place];
        int rank = 0;
        for (int i = 0; i < Size; i++)
        {
            rank += words[i] < own || (words[i] == own && i < place) ? 1 : 0;
        }

        return Math.Min((rank + Philox.Uniform(seed, number, within)) / Size, LargestBelowOne);
    }
}
