using PushSim.Analysis.Chance;
using PushSim.Analysis.Statistics;
using PushSim.Tests.Analysis;

namespace PushSim.Tests.Accuracy;

/// <summary>Tests, intervals, power, trends, least squares.</summary>
internal static class StatisticsRows
{
    private const string Rosetta = "Rosetta Code, Welch's t-test (values from R), read second-hand";
    private const string Sleep = "R documentation of t.test, Student's sleep data, from memory; digits computed here";
    private const string TTable = "computed here; agrees with printed t tables, from memory";
    private const string SciPy = "quoted in the SciPy test suite (stats/tests/test_hypotests.py), read second-hand";
    private const string Strd = "NIST Statistical Reference Datasets, certified, ";
    private const string Little = "Little, A Mann-Kendall Example (by hand), mathcs.holycross.edu; digits computed here";
    private const string Wilson = "Newcombe, Statistics in Medicine 17:857, 1998, Table I, method 3, read second-hand; digits computed here";

    private static readonly Lazy<WelchTest> s_welch = new(() => Welch(StatisticsTests.WelchFirst, StatisticsTests.WelchSecond));
    private static readonly Lazy<WelchTest> s_sleep = new(() => Welch(StatisticsTests.SleepFirst, StatisticsTests.SleepSecond));
    private static readonly Lazy<TrendTest> s_trend = new(() => TrendTest.Of(FamilyTests.Numbers(ComparisonTests.Broken)));
    private static readonly Lazy<StepTest> s_nile = new(() => StepTest.Of(FamilyTests.Numbers(FamilyTests.Nile)));

    private static WelchTest Welch(string first, string second) => WelchTest.Compare(FamilyTests.Numbers(first), FamilyTests.Numbers(second));

    private static GrubbsTest Grubbs() => GrubbsTest.Of(FamilyTests.Numbers(ComparisonTests.Outlying), 0.10)!.Value;

    private static AccuracyRow Quantile(double freedom, double expected) =>
        new($"Student's t, 97.5 %, {freedom:0} degrees of freedom", "1", expected, 6e-7, TTable, () => StudentT.Factor(0.95, freedom));

    private static AccuracyRow Coverage(int n, double p, string name, double expected, Func<long, long, PushSim.Analysis.Chance.Bounds> of) =>
        new(FormattableString.Invariant($"exact coverage of {name}, {n} matches, share {p}"), "1", expected, 6e-6, "computed here, outside of this project", () => ShareIntervalTests.Coverage(n, p, of));

    private static AccuracyRow Certified(string what, double value, double relative, string set, Func<double> measure, string note = "read second-hand") =>
        new(what, "1", value, relative * Math.Abs(value), Strd + set + ", " + note, measure);

    // where a search for the least squares stops depends on last bits
    private static AccuracyRow Searched(AccuracyRow row) => row with { Floor = 1e-7 };

    public static readonly AccuracyRow[] All =
    [
        new("Welch, 15 and 15 values: t", "1", -2.455356398286, 5e-8, Rosetta, () => s_welch.Value.T),
        new("Welch, 15 and 15 values: degrees of freedom", "1", 24.98852929, 5e-8, Rosetta, () => s_welch.Value.Freedom),
        new("Welch, 15 and 15 values: p", "1", 0.021378001462867, 1e-10, Rosetta, () => s_welch.Value.P),
        new("Welch, 15 and 15 values: lower end of the difference", "1", -3.984096267, 6e-8, Rosetta, () => s_welch.Value.Difference.Low),
        new("Welch, sleep data: p", "1", 0.0793941402, 1e-10, Sleep, () => s_sleep.Value.P),
        new("Holm, four comparisons: adjusted p of 0.03", "1", 0.06, 1e-15, "worked example, a copy of geeksforgeeks.org, Holm-Bonferroni method; adjusted value computed here", () => Holm.Adjust([0.01, 0.04, 0.03, 0.005])[2]),
        Quantile(2, 4.302653),
        Quantile(5, 2.570582),
        Quantile(20, 2.085963),
        new("Student's t of 195 values", "1", 1.972267533, 1e-8, "NIST/SEMATECH e-Handbook 1.3.5.2, read second-hand; digits computed here", () => StudentT.Factor(0.95, 194)),
        new("Tukey, three groups of five: p of the first pair", "1", 0.0144483269098, 1e-7, "SAS example, values printed by MATLAB, " + SciPy, () => FamilyTests.Pooled(FamilyTests.Sas, 0, 1).P),
        new("Games-Howell, three groups of four: p of the first pair", "1", 0.558733632, 1e-6, "SPSS and R PMCMRplus, " + SciPy, () => RangeTest.Of(WelchTest.Compare(FamilyTests.Howell[0], FamilyTests.Howell[1]), 3).P),
        new("power of 20 and 20 pulls, one deviation apart, one tail", "1", 0.8689528, 6e-8, "output of R's power.t.test, read second-hand", () => TTestPower.Of(20, 1.0, 0.05, hasFarTail: false)),
        new("pulls for 80 % power, half a deviation", "1", 63.766, 5.1e-4, "Cohen, 1988, table 2.4.1, from memory (64); digits computed here", () => TTestPower.ExactCount(0.5)),
        new("Grubbs, eight values: G", "1", 2.468764611, 1e-9, "NIST/SEMATECH e-Handbook 1.3.5.17.1, read second-hand; digits computed here", () => Grubbs().G),
        new("Grubbs, eight values: critical value, one side", "1", 2.032, 5e-4, "NIST/SEMATECH e-Handbook 1.3.5.17.1, read second-hand", () => Grubbs().Critical),
        new("Mann-Kendall, 14 values: S", "1", 54.0, 0.0, Little, () => s_trend.Value.S),
        new("Mann-Kendall, 14 values: Z", "1", 2.905836846, 1e-9, Little, () => s_trend.Value.Z),
        new("Mann-Kendall, 14 values: Sen's slope", "1", 0.566667, 5e-7, Little, () => s_trend.Value.Slope),
        new("Nile 1871 to 1970: years before the step", "1", 28.0, 0.0, "strucchange and changepoint output (pursuitofdatascience.github.io, ggchangepoint); data from memory", () => s_nile.Value.After),
        new("Nile 1871 to 1970: F of the step", "1", 75.929769, 5e-7, "computed here; agrees with R's supF, from memory", () => s_nile.Value.F),
        new("Wilson, 81 of 263: lower end", "1", 0.25528852, 5e-9, Wilson, () => ShareInterval.Wilson(81, 263).Low),
        new("Wilson, 15 of 148: upper end", "1", 0.16048724, 5e-9, Wilson, () => ShareInterval.Wilson(15, 148).High),
        new("difference of 56 of 70 and 48 of 80: lower end", "1", 0.05243147, 5.1e-9, "Newcombe, Statistics in Medicine 17:873, 1998, method 10, from memory; digits computed here", () => ShareInterval.OfTwo(56, 70, 48, 80).Low),
        Coverage(20, 0.1, "Wilson", 0.95683, ShareInterval.Wilson),
        Certified("line, Norris: intercept", -0.262323073774029, 1e-11, "Norris", () => RegressionTests.Norris().Intercept, "read second-hand; points from memory"),
        Certified("line, Norris: slope", 1.00211681802045, 1e-13, "Norris", () => RegressionTests.Norris().Slope, "read second-hand; points from memory"),
        Searched(Certified("curve, Misra1a: b1", 2.3894212918e2, 1e-7, "Misra1a", () => RegressionTests.Misra1a(500, 1e-4).Parameters[0])),
        Searched(Certified("curve, Misra1a: deviation of b1", 2.7070075241, 1e-6, "Misra1a", () => RegressionTests.Misra1a(500, 1e-4).Deviations[0])),
        Searched(Certified("curve, Thurber: b7", 4.9727297349e-2, 1e-7, "Thurber", () => RegressionTests.Thurber(1000.0, 1000.0, 400.0, 40.0, 0.7, 0.3, 0.03).Parameters[6])),
        Certified("curve, Thurber: sum of squares", 5.6427082397e3, 1e-9, "Thurber", () => RegressionTests.Thurber(1000.0, 1000.0, 400.0, 40.0, 0.7, 0.3, 0.03).ResidualSum),
    ];
}
