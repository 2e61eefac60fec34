using PushSim.Binding;
using PushSim.Runs;

namespace PushSim.Analysis.Chance;

/// <summary>What a match gave; all that is kept of it.</summary>
/// <param name="Number">Its number, from 0.</param>
/// <param name="Winner">0 the first robot, 1 the opponent, -1 neither [1].</param>
/// <param name="Ending">How it ended.</param>
/// <param name="GroundGained">Ground that the first robot gained, negative if it lost ground [m].</param>
/// <param name="EndTime">When it ended [s].</param>
/// <param name="Limit">What bound the first robot most since the first touch.</param>
/// <param name="OpponentLimit">The same of the opponent.</param>
/// <param name="Failure">Why it failed.</param>
/// <param name="Fault">What is wrong with its draws, as their reader says; null else.</param>
public readonly record struct MatchEnd(long Number, int Winner, ShoveEnding Ending, double GroundGained, double EndTime, BindingKind Limit, BindingKind OpponentLimit, MatchFailure Failure = MatchFailure.None, string? Fault = null)
{
    /// <summary>True if the match could not be run to its end.</summary>
    public bool HasFailed => Failure != MatchFailure.None;

    /// <summary>A match that failed.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="failure">Why.</param>
    /// <param name="fault">What is wrong with its draws; null else.</param>
    public static MatchEnd Failed(long number, MatchFailure failure, string? fault = null) => new(number, -1, ShoveEnding.Stalemate, 0.0, 0.0, BindingKind.Nothing, BindingKind.Nothing, failure, fault);

    /// <summary>Number of the match with the middle one of all grounds gained, of like ones the one of the middle number [1]; null if none was finished. Exact, in passes over the matches that
    /// narrow the middle down digit by digit, so that they need not be kept.</summary>
    /// <param name="ends">The matches by number; failed ones are left out.</param>
    public static long? Middling(IEnumerable<MatchEnd> ends)
    {
        const int DigitBits = 16;
        long left = ends.LongCount(o => !o.HasFailed) / 2;
        ulong known = 0;
        for (int shift = 64 - DigitBits; shift >= 0; shift -= DigitBits)
        {
            long[] counts = new long[1 << DigitBits];
            int above = shift + DigitBits;
            foreach (MatchEnd end in ends)
            {
                ulong order = Order(end.GroundGained);
                if (!end.HasFailed && (above == 64 || order >> above == known >> above))
                {
                    counts[(int)((order >> shift) & ((1 << DigitBits) - 1))]++;
                }
            }

            int digit = 0;
            for (; digit < counts.Length - 1 && left >= counts[digit]; digit++)
            {
                left -= counts[digit];
            }

            known |= (ulong)digit << shift;
        }

        foreach (MatchEnd end in ends.Where(o => !o.HasFailed && Order(o.GroundGained) == known))
        {
            if (left-- == 0)
            {
                return end.Number;
            }
        }

        return null;
    }

    // Whole numbers that lie in the order of the values; -0 is 0
    private static ulong Order(double value)
    {
        long bits = BitConverter.DoubleToInt64Bits(value + 0.0);
        return (ulong)(bits ^ ((bits >> 63) | long.MinValue));
    }
}
