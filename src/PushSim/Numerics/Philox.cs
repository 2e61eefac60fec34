namespace PushSim.Numerics;

/// <summary>Philox4x32: a counter-based generator; the same counter and key give the same four words, whoever asks and in whatever order. Salmon, Moraes, Dror, Shaw,
/// "Parallel random numbers: as easy as 1, 2, 3", SC11, 2011.</summary>
public static class Philox
{
    /// <summary>Rounds of the published generator [1].</summary>
    public const int Rounds = 10;

    // 2^53 - 1: half more would round to 2^53 and so to 1
    private const double LargestOdd = 9007199254740991.0;

    private const uint M0 = 0xD2511F53;
    private const uint M1 = 0xCD9E8D57;
    private const uint W0 = 0x9E3779B9;
    private const uint W1 = 0xBB67AE85;

    /// <summary>The four words of a counter.</summary>
    /// <param name="counter">Four words, the lowest first.</param>
    /// <param name="key">Two words.</param>
    /// <param name="rounds">Count of rounds [1].</param>
    public static (uint W0, uint W1, uint W2, uint W3) Block((uint C0, uint C1, uint C2, uint C3) counter, (uint K0, uint K1) key, int rounds = Rounds)
    {
        (uint c0, uint c1, uint c2, uint c3) = counter;
        (uint k0, uint k1) = key;
        for (int i = 0; i < rounds; i++)
        {
            ulong p0 = (ulong)M0 * c0;
            ulong p1 = (ulong)M1 * c2;
            (c0, c1, c2, c3) = ((uint)(p1 >> 32) ^ c1 ^ k0, (uint)p1, (uint)(p0 >> 32) ^ c3 ^ k1, (uint)p0);
            k0 += W0;
            k1 += W1;
        }

        return (c0, c1, c2, c3);
    }

    /// <summary>A number evenly spread in 0..1, never 0 nor 1 [1].</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="match">Number of the match.</param>
    /// <param name="quantity">Number of the quantity, see <see cref="NumberOf"/>.</param>
    public static double Uniform(ulong seed, long match, ulong quantity)
    {
        (uint w0, uint w1, uint _, uint _) = Words(seed, match, quantity);
        return ToUnit(w0, w1);
    }

    /// <summary>The four words of a match's quantity.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="match">Number of the match.</param>
    /// <param name="quantity">Number of the quantity, see <see cref="NumberOf"/>.</param>
    public static (uint W0, uint W1, uint W2, uint W3) Words(ulong seed, long match, ulong quantity) =>
        Block(((uint)match, (uint)((ulong)match >> 32), (uint)quantity, (uint)(quantity >> 32)), ((uint)seed, (uint)(seed >> 32)));

    /// <summary>Two words to the middle of one of 2^53 equal parts of 0..1, the first 27 and the second 26 bits of it [1].</summary>
    public static double ToUnit(uint a, uint b) => Math.Min(((a >> 5) * 67108864.0) + (b >> 6) + 0.5, LargestOdd) / 9007199254740992.0;

    /// <summary>A number for a quantity's name (FNV-1a, 64 bit), so that the same quantity of two scenarios gets the same draw.</summary>
    public static ulong NumberOf(string name)
    {
        ulong hash = 14695981039346656037;
        foreach (char c in name)
        {
            hash = (hash ^ (byte)c) * 1099511628211;
            hash = (hash ^ (byte)(c >> 8)) * 1099511628211;
        }

        return hash;
    }
}
