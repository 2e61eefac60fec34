using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PushSim.Numerics;

/// <summary>The loops over components of the stepper. Every component is its own chain of fused multiply-adds in the order of the
/// stages, so the vector part and the scalar tail give the same bits, and so do mirrored components.</summary>
internal static class StageSums
{
    private const int Lanes = 4;

    /// <summary>result = y + h sum_j a_j k_j over a range of components; k_j starts at k[rows_j].</summary>
    [MethodImpl(Kernel.Whole)]
    internal static void Combine(
        Span<double> result,
        ReadOnlySpan<double> y,
        double h,
        ReadOnlySpan<double> k,
        ReadOnlySpan<double> coefficients,
        ReadOnlySpan<int> rows,
        int from,
        int to)
    {
        ref double target = ref MemoryMarshal.GetReference(result);
        ref double start = ref MemoryMarshal.GetReference(y);
        ref double slopes = ref MemoryMarshal.GetReference(k);
        Vector256<double> step = Vector256.Create(h);
        int i = from;
        for (; i <= to - Lanes; i += Lanes)
        {
            Vector256<double> sum = Vector256<double>.Zero;
            for (int j = 0; j < coefficients.Length; j++)
            {
                Vector256<double> slope = Vector256.LoadUnsafe(ref slopes, (nuint)(rows[j] + i));
                sum = Vector256.FusedMultiplyAdd(Vector256.Create(coefficients[j]), slope, sum);
            }

            Vector256<double> value = Vector256.LoadUnsafe(ref start, (nuint)i);
            Vector256.FusedMultiplyAdd(step, sum, value).StoreUnsafe(ref target, (nuint)i);
        }

        for (; i < to; i++)
        {
            double sum = 0.0;
            for (int j = 0; j < coefficients.Length; j++)
            {
                sum = Math.FusedMultiplyAdd(coefficients[j], k[rows[j] + i], sum);
            }

            result[i] = Math.FusedMultiplyAdd(h, sum, y[i]);
        }
    }

    /// <summary>Sum over components of (e / (atol + rtol max(|y_n|, |y_new|)))^2, with e = h sum_j d_j k_j [1]; NaN if the new
    /// state or the estimate is not finite, also in a component outside the norm.</summary>
    [MethodImpl(Kernel.Whole)]
    internal static double SquaredError(
        ReadOnlySpan<double> old,
        ReadOnlySpan<double> trial,
        double h,
        ReadOnlySpan<double> k,
        ReadOnlySpan<double> differences,
        ReadOnlySpan<int> rows,
        ReadOnlySpan<double> absolute,
        double relative)
    {
        ref double start = ref MemoryMarshal.GetReference(old);
        ref double end = ref MemoryMarshal.GetReference(trial);
        ref double slopes = ref MemoryMarshal.GetReference(k);
        ref double floor = ref MemoryMarshal.GetReference(absolute);
        Vector256<double> totals = Vector256<double>.Zero;
        int i = 0;
        for (; i <= trial.Length - Lanes; i += Lanes)
        {
            Vector256<double> sum = Vector256<double>.Zero;
            for (int j = 0; j < differences.Length; j++)
            {
                Vector256<double> slope = Vector256.LoadUnsafe(ref slopes, (nuint)(rows[j] + i));
                sum = Vector256.FusedMultiplyAdd(Vector256.Create(differences[j]), slope, sum);
            }

            Vector256<double> value = Vector256.LoadUnsafe(ref end, (nuint)i);
            Vector256<double> size = Vector256.Max(
                Vector256.Abs(Vector256.LoadUnsafe(ref start, (nuint)i)), Vector256.Abs(value));
            Vector256<double> scale = Vector256.LoadUnsafe(ref floor, (nuint)i) + (Vector256.Create(relative) * size);
            Vector256<double> ratio = Vector256.Create(h) * sum / scale;
            totals = Vector256.FusedMultiplyAdd(ratio, ratio, totals);

            // An infinite new state would hide its own error behind an infinite scale: 0 times it is NaN.
            totals = Vector256.FusedMultiplyAdd(Vector256<double>.Zero, value, totals);
        }

        // Four partial sums in fixed order, so that the norm has the same bits on every processor.
        double total = (totals[0] + totals[1]) + (totals[2] + totals[3]);
        for (; i < trial.Length; i++)
        {
            double sum = 0.0;
            for (int j = 0; j < differences.Length; j++)
            {
                sum = Math.FusedMultiplyAdd(differences[j], k[rows[j] + i], sum);
            }

            double scale = absolute[i] + (relative * Math.Max(Math.Abs(old[i]), Math.Abs(trial[i])));
            double ratio = h * sum / scale;
            total = Math.FusedMultiplyAdd(ratio, ratio, total);
            total = Math.FusedMultiplyAdd(0.0, trial[i], total);
        }

        return total;
    }
}
