using PushSim.Analysis.Sweep;
using PushSim.Words.Sweeps;

namespace PushSim.Cli.Sweep;

/// <summary>A sweep as text for a person.</summary>
internal static class SweepText
{
    private const int MostRows = 60;

    public static void Write(TextWriter output, SweepRequest request, SweepResult r, IReadOnlyList<string> files) => new ScreenReport(Card(request, r), r.Verdict)
    {
        Tables = [Table(request, r, MostRows)], Warnings = r.Warnings, Asides = [Computation(request, r, r.Seconds)], Files = files,
    }.Write(output, request.Output.Details);

    public static AnswerCard Card(SweepRequest request, SweepResult r)
    {
        IReadOnlyList<SweepInput> inputs = request.Told(r).Inputs;
        return SweepCard.Of(inputs, r.Table, request.Odds, SweepVerdict.Of(inputs, r.Table, request.Odds, r.Robot));
    }

    /// <summary>The points, for screen and page.</summary>
    public static AnswerTable Table(SweepRequest request, SweepResult r, int mostRows)
    {
        AnswerTable table = SweepTables.Of(request.Told(r).Inputs, r.Table, request.Odds > 0, mostRows);
        return r.Usual.Length == 0 ? table : table.AddRemark(r.Usual, isAside: true);
    }

    public static string Computation(SweepRequest request, SweepResult r, double? seconds = null) => SweepWords.Computation(r.Table.Points.Count, request.Odds, request.Plan.Seed, seconds);
}
