using PushSim.Analysis.Fit;
using Xunit;

namespace PushSim.Tests.Analysis;

public class FitRecoveryTests
{
    [Fact]
    public void Scratch()
    {
        int n = 2000;
        Dictionary<string, (int In, int All, double Z)> count = [];
        int found = 0;
        for (int seed = 0; seed < n; seed++)
        {
            SimulatedLog log = SimulatedLog.Make(10_000 + seed);
            FoundTrace f = PullFinder.Find(log.Trace);
            if (f.Problem is not null)
            {
                Console.WriteLine($"{seed} {f.Problem} rate {log.Rate}");
                continue;
            }

            found += f.Pulls.Count == log.Pulls ? 1 : 0;
            if (f.Pulls.Count != log.Pulls)
            {
                Console.WriteLine($"{seed} pulls {f.Pulls.Count} of {log.Pulls} rate {log.Rate}");
            }

            TyreFit fit = PullFit.OfTraces("t", [f], GripLoad.Fixed(log.Load), null, false);
            string kind = $"rate {log.Rate} {(log.Pulls == 1 ? "one" : "many")}";
            if (fit.KineticFriction is { } k)
            {
                Count("kinetic " + kind, k.Low <= log.Kinetic && log.Kinetic <= k.High, (k.Value - log.Kinetic) / (k.High - k.Low));
                Count("kinetic", k.Low <= log.Kinetic && log.Kinetic <= k.High, (k.Value - log.Kinetic) / (k.High - k.Low));
            }

            if (!fit.IsStaticLowerBound)
            {
                var s = fit.StaticFriction;
                Count("static " + kind, s.Low <= log.Static && log.Static <= s.High, (s.Value - log.Static) / (s.High - s.Low));
                Count("static", s.Low <= log.Static && log.Static <= s.High, (s.Value - log.Static) / (s.High - s.Low));
            }
        }

        foreach ((string key, var c) in count.OrderBy(c => c.Key))
        {
            Console.WriteLine($"{key,-28} {c.In} of {c.All} = {100.0 * c.In / c.All:0.0} %, mean offset {c.Z / c.All:0.000} widths");
        }

        Console.WriteLine($"all pulls found in {found}");
        void Count(string key, bool isIn, double z)
        {
            var c = count.GetValueOrDefault(key);
            count[key] = (c.In + (isIn ? 1 : 0), c.All + 1, c.Z + z);
        }
    }
}
