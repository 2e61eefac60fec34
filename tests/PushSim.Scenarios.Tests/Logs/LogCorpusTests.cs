using System.Globalization;
using System.Runtime.CompilerServices;
using PushSim.Analysis.Compare;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Sources;
using PushSim.Surroundings;
using Xunit;

namespace PushSim.Scenarios.Tests.Logs;

/// <summary>One invented pull as boards, terminal programs and spreadsheets print it: every file of Corpus gives the readings that index.tsv says, or the complaint.</summary>
public class LogCorpusTests
{
    private const double Gram = 9.80665e-3;

    private static readonly string s_folder = Path.Combine(Path.GetDirectoryName(Here())!, "Corpus");
    private static readonly double[][] s_truth = [.. File.ReadLines(Path.Combine(s_folder, "truth.csv")).Skip(2).Select(l => l.Split(',').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray())];

    public static TheoryData<string> OfKind(string kind) => [.. Index().Where(r => r[1] == kind).Select(r => r[0])];

    [Theory]
    [MemberData(nameof(OfKind), "trace")]
    public void A_log_gives_the_pull(string file)
    {
        string[] row = Index().Single(r => r[0] == file);
        LogResult result = Read(row);
        Assert.True(result.Problems.Count == 0, string.Join("; ", result.Problems));
        Assert.Empty(result.Readings);
        Assert.Equal(int.Parse(row[7], CultureInfo.InvariantCulture), result.Traces.Count);
        double scale = Number(row[3]);
        HashSet<int> dropped = [.. row[6].Split(',', StringSplitOptions.RemoveEmptyEntries).Select(d => int.Parse(d, CultureInfo.InvariantCulture))];
        double[][] truth = [.. s_truth.Where((_, i) => !dropped.Contains(i))];
        foreach (LogTrace trace in result.Traces)
        {
            ForceTrace got = trace.Trace;
            Assert.Equal(truth.Length, got.Time.Length);
            for (int i = 0; i < truth.Length; i++)
            {
                Assert.True(Math.Abs((got.Force[i] / Gram) - (scale * truth[i][1])) <= Number(row[4]), $"reading {i}: {got.Force[i] / Gram} gf for {scale * truth[i][1]}");
                Assert.True(Math.Abs(got.Time[i] - got.Time[0] - truth[i][0]) <= Number(row[5]), $"reading {i}: {got.Time[i] - got.Time[0]} s for {truth[i][0]}");
            }
        }

        Assert.Contains(row[8], string.Join("; ", result.Notes), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(OfKind), "readings")]
    public void A_table_gives_its_readings(string file)
    {
        string[] row = Index().Single(r => r[0] == file);
        LogResult result = Read(row);
        Assert.True(result.Problems.Count == 0, string.Join("; ", result.Problems));
        Assert.Empty(result.Traces);
        Assert.Equal(row[8], string.Join('|', result.Readings.Select(r => $"{r.Tyre ?? "-"} {Text(r.Peak)} {Text(r.Force)}")));
    }

    [Theory]
    [MemberData(nameof(OfKind), "wrong")]
    public void A_wrong_log_is_complained_about(string file)
    {
        string[] row = Index().Single(r => r[0] == file);
        string[] says = row[8].Split(" => ");
        LogResult result = Read(row);
        Problem problem = result.Problems[0];
        Assert.Empty(result.Traces);
        Assert.Contains(says[0], problem.Message, StringComparison.Ordinal);
        Assert.Contains(says[1], problem.Help, StringComparison.Ordinal);
        Assert.Equal(int.Parse(row[7], CultureInfo.InvariantCulture), problem.Line);
    }

    // `compare` takes lines apart by the same rule; it wants names and units of its columns
    [Theory]
    [InlineData("arrow-head.txt")]
    [InlineData("label-time.txt")]
    [InlineData("label-json.txt")]
    [InlineData("label-brackets.txt")]
    [InlineData("semicolon-thousands.txt")]
    [InlineData("quoted-thousands.txt")]
    [InlineData("quotes.csv")]
    [InlineData("byte-order-mark.csv")]
    [InlineData("carriage-return.csv")]
    [InlineData("head-again.csv")]
    [InlineData("preamble-head.txt")]
    [InlineData("remarks.csv")]
    [InlineData("exponents.csv")]
    [InlineData("pounds.csv")]
    public void Compare_reads_the_same_force(string file)
    {
        string[] row = Index().Single(r => r[0] == file);
        ChannelLogResult result = ChannelLogReader.Read(Path.Combine(s_folder, file));
        Assert.True(result.Problems.Count == 0, string.Join("; ", result.Problems));
        Channel force = Assert.Single(result.Log!.Channels, c => c.Kind == ChannelKind.Force);
        Assert.Equal(s_truth.Length, force.Values.Length);
        Assert.All(Enumerable.Range(0, s_truth.Length), i => Assert.True(Math.Abs((force.Values[i] / Gram) - (Number(row[3]) * s_truth[i][1])) <= Number(row[4]), $"reading {i}"));
        Assert.All(Enumerable.Range(0, s_truth.Length), i => Assert.True(Math.Abs(result.Log.Time[i] - s_truth[i][0]) <= Number(row[5]), $"reading {i}"));
    }

    [Fact]
    public void Every_file_is_in_the_index()
    {
        string[] files = [.. Directory.GetFiles(s_folder).Select(f => Path.GetFileName(f)).Where(f => f is not ("truth.csv" or "index.tsv")).Order(StringComparer.Ordinal)];
        Assert.Equal(files, Index().Select(r => r[0]).Order(StringComparer.Ordinal));
        Assert.True(files.Length >= 40);
    }

    private static LogResult Read(string[] row)
    {
        Dictionary<string, string> options = row[2].Split(';', StringSplitOptions.RemoveEmptyEntries).Select(o => o.Split('=')).ToDictionary(o => o[0], o => o[1]);
        return LogReader.Read(Path.Combine(s_folder, row[0]), new LogOptions { ForceUnit = options.GetValueOrDefault("unit"), Rate = options.TryGetValue("rate", out string? rate) ? Number(rate) : null });
    }

    private static string[][] Index() => [.. File.ReadLines(Path.Combine(s_folder, "index.tsv")).Where(l => !l.StartsWith('#')).Skip(1).Select(l => l.Split('\t'))];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(double? newton) => newton is double n ? (n / Gram).ToString("0.##", CultureInfo.InvariantCulture) : "-";

    private static string Here([CallerFilePath] string path = "") => path;
}
