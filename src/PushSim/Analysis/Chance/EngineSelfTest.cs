using System.Buffers.Binary;
using System.Security.Cryptography;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Chance;

/// <summary>What the engine computes, as a hash: a few short matches of two robots that between them have everything an equation has, in the lanes that this build plays, a short pull, and the elementary functions over the arguments that scenes do not reach. Two builds whose
/// hash is the same give the same bits, so that finished matches of the one go on in the other; a build whose numbers differ takes none of them.</summary>
public static class EngineSelfTest
{
    private const int Digits = 16;

    // Length of the match beside each one, so that lanes end apart [1].
    private const double Shorter = 0.7;

    private static readonly Lazy<string> s_double = new(() => Make(Precision.Double));
    private static readonly Lazy<string> s_single = new(() => Make(Precision.Single));

    /// <summary>The hash; made when it is first asked for.</summary>
    /// <param name="precision">Number type of the equations.</param>
    public static string Hash(Precision precision) => precision == Precision.Single ? s_single.Value : s_double.Value;

    /// <summary>Hash of the start of one match, nose to nose: what a scenario as it is read and drawn makes the engine compute.</summary>
    /// <param name="source">The matches.</param>
    /// <param name="number">Number of the match [1].</param>
    public static string OfMatch(IMatchSource source, long number)
    {
        // long enough for drives, tyres and battery to show every number, short enough to cost less than a match [s]
        const double Longest = 0.2;
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        if (source.Match(number, out string cause) is not ScenarioSettings match)
        {
            return "none: " + cause;
        }

        ScenarioSettings start = match with { Manoeuvre = match.Manoeuvre with { EndTime = Math.Min(Longest, match.Manoeuvre.EndTime) }, Shove = match.Shove with { Gap = Math.Min(0.001, match.Shove.Gap) } };
        Add(hash, Played(new MatchBatch(threads: 1, precision: start.Numerics.Precision), start));
        return Text(hash);
    }

    private static string Make(Precision precision)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        ScenarioSettings[] matches = [.. SelfTestScenes.Matches.Select(m => m with { Numerics = m.Numerics with { Precision = precision } })];
        var batch = new MatchBatch(threads: 1, precision: precision);
        foreach (ScenarioSettings match in matches)
        {
            Add(hash, Played(batch, match, match with { Manoeuvre = match.Manoeuvre with { EndTime = Shorter * match.Manoeuvre.EndTime } }));
        }

        RunResult pull = Simulator.Run(SelfTestScenes.Pull);
        foreach (Series series in pull.Trace.All)
        {
            foreach (double value in series.Values)
            {
                Add(hash, value);
            }
        }

        foreach (double value in precision == Precision.Single ? SelfTestFunctions.Values<F1>() : SelfTestFunctions.Values<R1>())
        {
            Add(hash, value);
        }

        return Text(hash);
    }

    // side by side: alone each has the same bits, but the JIT would compile another engine for it
    private static MatchOutcome[] Played(MatchBatch batch, params ScenarioSettings[] matches)
    {
        var ends = new MatchOutcome[matches.Length];
        batch.Run(0, matches.Length, n => matches[(int)n], (in MatchOutcome o) => ends[(int)o.Number] = o);
        return ends;
    }

    private static void Add(IncrementalHash hash, IEnumerable<MatchOutcome> ends)
    {
        foreach (MatchOutcome end in ends)
        {
            Add(hash, end);
        }
    }

    private static void Add(IncrementalHash hash, MatchOutcome o)
    {
        double[] whole = [(int)o.Status, (int)o.Failure, (int)o.Ending, o.Winner, o.Evaluations, o.Steps, o.RejectedSteps, o.GroundGained, o.EndTime, o.FirstContact];
        foreach (double value in (IEnumerable<double>)[.. whole, .. Of(o.First), .. Of(o.Opponent)])
        {
            Add(hash, value);
        }

        static double[] Of(MatchRobot r) => [r.TurnedAside, r.PeakBatteryCurrent, r.PeakControllerCurrent, r.LowestVoltage, (int)r.LimitedBy];
    }

    private static void Add(IncrementalHash hash, double value)
    {
        Span<byte> bytes = stackalloc byte[sizeof(double)];
        BinaryPrimitives.WriteInt64LittleEndian(bytes, double.IsNaN(value) ? 0x7FF8_0000_0000_0000 : BitConverter.DoubleToInt64Bits(value));
        hash.AppendData(bytes);
    }

    private static string Text(IncrementalHash hash) => Convert.ToHexStringLower(hash.GetHashAndReset())[..Digits];
}
