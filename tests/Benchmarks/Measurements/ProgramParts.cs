using System.Text.Json;

namespace PushSim.Benchmarks.Measurements;

/// <summary>Figures of whole programs, both measured in one sequence.</summary>
internal static class ProgramParts
{
    private const string Shove = "scenarios/shove-equals.toml";

    /// <summary>What a further drawn match costs, and a whole `odds`.</summary>
    public static IEnumerable<Figure> Odds(Duel duel)
    {
        int count = duel.IsShort ? 1500 : 6000;
        string Command(int n) => $"odds {Shove} --matches {n} --threads 2 --no-plots";
        (Cost Base, Cost Own) few = duel.Least(Into(Command(count / 4))), all = duel.Least(Into(Command(count)));
        (double more, string part) = (0.75 * count, "odds");
        (double before, double own) = (1e3 * (all.Base.Cpu - few.Base.Cpu) / more, 1e3 * (all.Own.Cpu - few.Own.Cpu) / more);
        yield return Figure.OfCost(part, "a further match [ms of a core]", $"{Command(count)}, less that of {count / 4}", before, own, "0.000");
        yield return Figure.OfCost(part, "a million matches [core hours]", "", before / 3.6, own / 3.6, "0.00");
        yield return Figure.OfCost(part, "whole process [s of a core]", Command(count), all.Base.Cpu, all.Own.Cpu);
        yield return new Figure(part, "matches a second, whole process", Command(count), $"{count / all.Base.Wall:0}", $"{count / all.Own.Wall:0}", $"{all.Base.Wall / all.Own.Wall:0.00}");
    }

    /// <summary>Time to an interval of 2 % on either side at even odds.</summary>
    public static IEnumerable<Figure> Interval(Duel duel)
    {
        const string command = $"odds {Shove} --matches 100000 --within 2% --threads 2 --no-plots";
        (Cost b, Cost o) = duel.Least(Into(command));
        yield return Figure.OfCost("interval", "win share known to 2 % [s of a core]", command, b.Cpu, o.Cpu);
        yield return Figure.OfCost("interval", "the same [s]", command, b.Wall, o.Wall);
    }

    /// <summary>Engine time of a run of every shipped file that both have, by what `run` tells of it.</summary>
    public static IEnumerable<Figure> Engine(Duel duel)
    {
        string[] files = [.. Directory.GetFiles(Path.Combine(duel.Base.Root, "scenarios"), "*.toml").Select(f => Path.GetFileName(f)).Where(f => File.Exists(Path.Combine(duel.Own.Root, "scenarios", f))).Order()];
        Dictionary<string, (double Base, double Own)> least = files.ToDictionary(f => f, _ => (double.MaxValue, double.MaxValue));
        for (int round = 0; round < (duel.IsShort ? 2 : 5); round++)
        {
            foreach (string file in files)
            {
                (double b, double o) = least[file];
                least[file] = (Math.Min(b, Milliseconds(duel.Base, file)), Math.Min(o, Milliseconds(duel.Own, file)));
            }
        }

        double[] ratios = [.. least.Values.Select(v => v.Base / v.Own).Order()];
        string worst = least.MinBy(p => p.Value.Base / p.Value.Own).Key;
        (string Part, string Command) at = ("run", "run scenarios/FILE --json, simulation_ms");
        yield return new Figure(at.Part, $"engine time of {files.Length} files, median of the ratios", at.Command, "", "", ratios[ratios.Length / 2].ToString("0.00"));
        yield return Figure.OfCost(at.Part, $"the file that gained least, {worst} [ms]", at.Command, least[worst].Base, least[worst].Own, "0.0");
        string whole = $"run {Shove}";
        (Cost before, Cost own) = duel.Least(Into(whole));
        yield return Figure.OfCost(at.Part, "whole process with its picture [s of a core]", whole, before.Cpu, own.Cpu);
        yield return Figure.OfCost(at.Part, "the same [s]", whole, before.Wall, own.Wall);
    }

    /// <summary>Whole `limits` with its pictures.</summary>
    public static IEnumerable<Figure> Limits(Duel duel) => Whole("limits", $"limits {Shove}", duel);

    /// <summary>A fit by simulated pulls.</summary>
    public static IEnumerable<Figure> Fit(Duel duel) => Whole("fit", "fit scenarios/logs/mole-pulls.csv --robot scenarios/pull-test.toml --simulate --no-plots", duel);

    private static IEnumerable<Figure> Whole(string part, string command, Duel duel)
    {
        (Cost b, Cost o) = duel.Least(Into(command));
        yield return Figure.OfCost(part, "whole process [s of a core]", command, b.Cpu, o.Cpu);
        yield return Figure.OfCost(part, "the same [s]", command, b.Wall, o.Wall);
    }

    private static string Into(string command) => $"{command} --out {Contender.Out}";

    private static double Milliseconds(Contender program, string file)
    {
        using var document = JsonDocument.Parse(program.Run($"run scenarios/{file} --json").Output);
        return document.RootElement.GetProperty("simulation_ms").GetDouble();
    }
}
