using PushSim.Analysis.Limits;
using PushSim.Words.Limits;

namespace PushSim.Cli.Limits;

/// <summary>The limits as text for a person: verdict, forces, states, wheels, gains, ratio, wiring, match, what bound each wheel over the run.</summary>
internal static class LimitsText
{
    public static void Write(TextWriter output, LimitReport r, RunResult? run, ReadResult read, string file, IReadOnlyList<string> files) =>
        TextReport.Write(output, LimitVerdict.Of(r), LimitTables.Of(r, run), LimitWarnings.Of(r), [], EstimateText.Lines(read, file), files);
}
