using PushSim.Analysis.Chance;
using PushSim.Scenarios.Drawing;
using PushSim.Words.Matches;

namespace PushSim.Benchmarks;

/// <summary>What the engine makes of shipped files, in one process: `Benchmarks engine FOLDER [ROWS]`, the folder of scenarios. Prints a line a match, of a ladder of all robots and of the shoves with ramp, offset and lifted
/// wheel: which it is, what came of it, and the hashes that its journal would carry. tests/engine-mutations.sh compares them. ROWS is what another engine printed: where the
/// engine's hash is another, which tells all its journals from these, the first match that differs ends the work.</summary>
internal static class EngineBench
{
    private const long OfPair = 1, OfShove = 4;
    private const ulong Seed = 1;

    public static void Run(string folder, string? rows)
    {
        HashSet<string> others = rows is null ? [] : [.. File.ReadLines(rows).Select(l => l[..l.LastIndexOf('\t')])];
        string? other = rows is null ? null : File.ReadLines(rows).First().Split('\t')[^1].Split(' ')[0];
        string[] robots = [.. Directory.GetFiles(Path.Combine(folder, "robots"), "*.toml").Order(StringComparer.Ordinal)];
        List<(string Name, DrawableResult Read, long Matches)> contests = [];
        foreach ((int i, int j) in robots.SelectMany((_, i) => Enumerable.Range(i + 1, robots.Length - i - 1).Select(j => (i, j))))
        {
            contests.Add(("pair", DrawableScenario.OfPair(robots[i], robots[j]), OfPair));
        }

        foreach (string shove in new[] { "shove-ramp-flat", "shove-off-centre", "shove-lifted-wheel" })
        {
            contests.Add((shove, DrawableScenario.Open(Path.Combine(folder, shove + ".toml")), OfShove));
        }

        foreach ((string name, DrawableResult read, long matches) in contests)
        {
            if (read.Scenario is not DrawableScenario scenario)
            {
                Console.WriteLine($"{name}: not read");
                continue;
            }

            var source = new FileMatchSource(scenario, new ContestKey(Seed, scenario.Label));
            string engine = EngineSelfTest.Hash(((IDrawnMatches)source).Precision), hashes = $"{engine} {Fingerprint.Of(read, source)}";
            var work = new KeptMatches(new MatchPlan("odds", matches, Seed, 1), () => [], [source], KeptMatchWords.Instance);
            work.Run();
            foreach (MatchEnd end in work.Of(0))
            {
                string row = $"{name} {scenario.Label} {end.Number}\t{end.Winner} {end.Ending} {end.GroundGained:R} {end.EndTime:R} {end.Limit} {end.OpponentLimit} {end.Failure} {end.Fault}";
                Console.WriteLine($"{row}\t{hashes}");
                if (other is not null && engine != other && !others.Contains(row))
                {
                    return;
                }
            }
        }
    }
}
