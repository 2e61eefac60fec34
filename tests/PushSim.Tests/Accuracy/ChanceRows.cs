using System.Globalization;
using PushSim.Numerics;
using PushSim.Tests.Analysis;

namespace PushSim.Tests.Accuracy;

/// <summary>The generator's words, what is made of them, and shares of variance.</summary>
internal static class ChanceRows
{
    private const string Random123 = "Random123 kat_vectors; Salmon, Moraes, Dror, Shaw, SC11, 2011, read second-hand";
    private const string Ishigami = "Ishigami, Homma, 1990; values of Saltelli and others, Global Sensitivity Analysis, 2008, ch. 4, read second-hand";

    // the value is the number of words that differ
    private static AccuracyRow Words(string what, (uint, uint, uint, uint) counter, (uint, uint) key, (uint, uint, uint, uint) words, string source = Random123, int rounds = 10) =>
        new("Philox4x32, " + what, "1", 0.0, 0.0, source, () => Different(words, Philox.Block(counter, key, rounds)))
        {
            OutsideText = Hexadecimal(words),
            MeasuredText = () => Hexadecimal(Philox.Block(counter, key, rounds)),
        };

    private static int Different((uint, uint, uint, uint) a, (uint, uint, uint, uint) b) => List(a).Zip(List(b)).Count(p => p.First != p.Second);

    private static uint[] List((uint A, uint B, uint C, uint D) w) => [w.A, w.B, w.C, w.D];

    private static string Hexadecimal((uint, uint, uint, uint) words) => string.Join(" ", List(words).Select(w => w.ToString("x8", CultureInfo.InvariantCulture)));

    // three times the root mean square error of plain random points at 16384, computed here outside of this project
    private static AccuracyRow Total(int input, double expected, double error) =>
        new($"Ishigami's function, 16384 pairs: total index of x{input + 1}", "1", expected, 3.0 * error, Ishigami, () => SensitivityTests.Total(input, 11, 16_384).Share);

    private static AccuracyRow First(int input, double expected, double bound) =>
        new($"Ishigami's function, 100000 points: first-order index of x{input + 1}", "1", expected, bound, Ishigami, () => SensitivityTests.FirstOrder(input, 100_000));

    public static readonly AccuracyRow[] All =
    [
        Words("counter and key zero", (0, 0, 0, 0), (0, 0), (0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8)),
        Words("counter and key all ones", (0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff), (0xffffffff, 0xffffffff), (0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd)),
        Words("counter and key the digits of pi", (0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344), (0xa4093822, 0x299f31d0), (0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1)),
        Words("seven rounds, counter and key zero", (0, 0, 0, 0), (0, 0), (0x5f6fb709, 0x0d893f64, 0x4f121f81, 0x4f730a48), "computed here, outside of this project", 7),
        new("two words to a fraction", "1", 0.39904647231489565, 1e-15, "computed here", () => Philox.ToUnit(0x6627e8d5, 0xe169c58d)),
        new("normal quantile, 97.5 %", "1", 1.959963984540054, 1e-14, "printed in statistics tables, from memory", () => NormalQuantile.Of(0.975)),
        First(0, 0.31390519114781, 0.01),
        First(1, 0.44241114479004, 0.01),
        First(2, 0.0, 0.002),
        Total(0, 0.55758885520996, 0.0103),
        Total(1, 0.44241114479004, 0.0057),
        Total(2, 0.24368366406215, 0.0034),
    ];
}
