using System.Globalization;
using MathNet.Numerics.Distributions;
using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Analysis.Statistics;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>
/// Round trip: the engine makes logs of pulls, `fit` reads them, and its intervals are held against the tyre that was put in. `PUSHSIM_ENGINE_LOGS=400 PUSHSIM_ENGINE_LOGS_KEPT=1
/// PUSHSIM_ENGINE_LOGS_FIRST=60001` takes so many seeds, at throttles and rates that were not used in development; `PUSHSIM_ENGINE_LOGS_RAW=1` leaves the round trip out.
/// </summary>
public class EngineLogCoverageTests(ITestOutputHelper output)
{
    [Fact]
    public void Intervals_of_the_engines_own_logs_hold_the_tyre()
    {
        int cases = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_ENGINE_LOGS"), CultureInfo.InvariantCulture, out int n) ? n : 6;
        bool isKept = Environment.GetEnvironmentVariable("PUSHSIM_ENGINE_LOGS_KEPT") == "1";
        int first = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_ENGINE_LOGS_FIRST"), CultureInfo.InvariantCulture, out int f) ? f : 1;
        object gate = new();
        List<(int, string)> lines = [];
        (int[] held, int[] told) = ([0, 0], [0, 0]);
        (int bounds, int boundsHeld, int atSpeed) = (0, 0, 0);
        Parallel.For(first, first + cases, new ParallelOptions { MaxDegreeOfParallelism = 2 }, seed =>
        {
            EngineLog log = EngineLog.Make(seed, isKept);
            FoundTrace[] found = [.. log.Traces.Select(t => PullFinder.Find(t))];
            string line;
            TyreFit? done = null;
            if (found.Any(t => t.Problem is not null || t.Pulls.Count != 1))
            {
                line = FormattableString.Invariant($"{seed} problem {found.First(t => t.Problem is not null || t.Pulls.Count != 1).Problem?.Fault}");
            }
            else
            {
                GripLoad load = GripLoad.Of(log.Test.Robot, log.Test.Tether!.HookHeight, isDrag: false);
                TyreFit fit = PullFit.OfTraces("tyre", found, load, StallForce.Of(log.Test.Robot, log.Throttle), isDrag: false);
                if (Environment.GetEnvironmentVariable("PUSHSIM_ENGINE_LOGS_RAW") != "1")
                {
                    fit = RoundTrip.Of(log.Test, fit, load)?.Into(fit) ?? fit;
                }

                done = fit;
                line = FormattableString.Invariant($"{seed} thr {log.Throttle} rate {log.Cell.Rate} filt {log.Cell.FilterTime:0.000} pulls {found.Length} by {fit.Cause.By} r {fit.Cause.Ratio:0.00} S {Of(fit.StaticFriction, log.Truth.StaticFriction)} K {Of(fit.KineticFriction, log.Truth.KineticFriction)} vs {log.Truth.SlipSpeed:0.00} v {fit.Trip?.Speed:0.00} slow {fit.Trip?.IsTooSlow} lost {fit.Trip?.IsLost} off {fit.Trip?.Off:0.0000}");
            }
            lock (gate)
            {
                lines.Add((seed, line));
                if (done is { Trip: { } trip })
                {
                    foreach ((int which, Interval? one, double truth) in new[] { (0, trip.Static, log.Truth.StaticFriction), (1, trip.Kinetic, log.Truth.KineticFriction) })
                    {
                        told[which] += one is null ? 0 : 1;
                        held[which] += one is { } i && Holds(i, truth) ? 1 : 0;
                    }

                    bounds += trip.Static is null ? 1 : 0;
                    boundsHeld += trip.Static is null && Holds(done.StaticFriction, log.Truth.StaticFriction) ? 1 : 0;
                    atSpeed += trip.Kinetic is null ? 1 : 0;
                }
            }
        });
        string text = string.Join("\n", lines.OrderBy(l => l.Item1).Select(l => l.Item2));
        if (Environment.GetEnvironmentVariable("PUSHSIM_ENGINE_LOGS_OUT") is string path)
        {
            File.WriteAllText(path, text);
        }

        output.WriteLine(FormattableString.Invariant($"{cases} cases: {held[0]} of {told[0]} intervals of static and {held[1]} of {told[1]} of kinetic friction hold the tyre, {boundsHeld} of {bounds} lower bounds; sliding stands at this speed in {atSpeed}"));

        // of so many intervals of 95 % fewer hold in one of a thousand (binomial, computed here); wider ones are told, not failed
        Assert.InRange(told.Sum(), 1, 2 * cases);
        for (int which = 0; which < 2; which++)
        {
            Assert.True(held[which] == told[which] || Binomial.CDF(0.95, told[which], held[which]) > 0.001, $"{(which == 0 ? "static" : "kinetic")}: {held[which]} of {told[which]}");
        }

        Assert.True(boundsHeld == bounds || Binomial.CDF(0.95, bounds, boundsHeld) > 0.001, $"{boundsHeld} of {bounds} bounds");
    }

    private static string Of(Interval? i, double truth) => i is not { } v ? "none" : FormattableString.Invariant($"{(Holds(v, truth) ? "ok" : "MISS")} {truth:0.000} [{v.Low:0.000} {v.Value:0.000} {v.High:0.000}]");

    private static bool Holds(Interval i, double truth) => !(truth < i.Low) && !(truth > i.High);
}
