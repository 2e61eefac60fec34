using System.Diagnostics;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>
/// Many matches in one process: every number of every outcome finite, memory flat. The usual run plays 1500; all of the
/// 100,000: `PUSHSIM_MATCHES=100000 dotnet test -c Release tests/PushSim.Tests --filter ManyMatches`.
/// </summary>
public class ManyMatchesTests
{
    private const long MegaByte = 1 << 20;

    [Fact]
    public void Every_number_is_finite_and_memory_stays_flat()
    {
        int count = int.Parse(Environment.GetEnvironmentVariable("PUSHSIM_MATCHES") ?? "1500");
        ScenarioSettings s = RandomMatches.Damped(end: 0.3);
        var batch = new MatchBatch();
        long played = 0, touched = 0;
        List<long> odd = [];
        void Take(in MatchOutcome o)
        {
            played++;
            touched += o.FirstContact > 0.0 ? 1 : 0;
            if (!IsFinite(o) || o.Failure != MatchFailure.None)
            {
                odd.Add(o.Number);
            }
        }

        int start = count / 10;
        batch.Run(0, start, i => RandomMatches.Draw(s, i), Take);
        long before = GC.GetTotalMemory(forceFullCollection: true);
        batch.Run(start, count, i => RandomMatches.Draw(s, i), Take);
        long after = GC.GetTotalMemory(forceFullCollection: true);
        using var self = Process.GetCurrentProcess();
        TestContext.Current.SendDiagnosticMessage($"{count} matches: {(after - before) / 1024} kB more held, process {self.WorkingSet64 / MegaByte} MB");
        Assert.Equal(count, played);
        Assert.True(touched > 0.9 * count, $"only {touched} of {count} touched");
        Assert.True(odd.Count == 0, $"not finite or failed: {string.Join(", ", odd.Take(20))}");

        // what other tests hold at the same time stands in both readings; a kilobyte kept of each match would be 90 MB of 100,000
        Assert.True(after - before < (16 * MegaByte) + (count / 10), $"{(after - before) / MegaByte} MB more held after {count} matches");
        if (count >= 100_000)
        {
            Assert.True(self.WorkingSet64 < 300 * MegaByte, $"{self.WorkingSet64 / MegaByte} MB in use");
        }
    }

    // NaN says that the robots never met, which is an answer and no fault
    private static bool IsFinite(in MatchOutcome o) =>
        double.IsFinite(o.GroundGained) && double.IsFinite(o.EndTime) && !double.IsInfinity(o.FirstContact) && IsFinite(o.First) && IsFinite(o.Opponent);

    private static bool IsFinite(in MatchRobot r) =>
        (double.IsFinite(r.TurnedAside) && double.IsFinite(r.PeakBatteryCurrent)) && (double.IsFinite(r.PeakControllerCurrent) && double.IsFinite(r.LowestVoltage));
}
