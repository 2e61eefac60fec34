namespace PushSim.Benchmarks.Measurements;

/// <summary>Writes the table of figures of src/docs/measurements.md:
/// `Benchmarks measurements --base PROGRAM [--own PROGRAM] [--short] [--page FILE] [PART...]`. A program is the command line's DLL or an executable of it.</summary>
internal static class MeasureBench
{
    private static readonly (string Name, Func<Duel, IEnumerable<Figure>> Of)[] s_parts =
    [
        ("odds", ProgramParts.Odds), ("interval", ProgramParts.Interval), ("run", ProgramParts.Engine), ("limits", ProgramParts.Limits), ("fit", ProgramParts.Fit),
        ("accuracy", duel => AccuracyPart.Of(duel.IsShort)),
    ];

    /// <summary>Names of the parts, in the order of the table.</summary>
    public static string[] Names { get; } = [.. s_parts.Select(p => p.Name)];

    /// <summary>Measures what is asked for and writes it.</summary>
    public static int Run(string[] args)
    {
        string? Option(string name) => Array.IndexOf(args, name) is >= 0 and int i && i + 1 < args.Length ? args[i + 1] : null;
        string[] options = ["--base", "--own", "--page"];
        string[] parts = [.. args.Where((a, i) => !a.StartsWith("--", StringComparison.Ordinal) && (i == 0 || !options.Contains(args[i - 1])))];
        if (Option("--base") is not string path || parts.Except(Names).Any())
        {
            Console.Error.WriteLine($"Benchmarks measurements --base PROGRAM [--own PROGRAM] [--short] [--page FILE] [PART...]; parts: {string.Join(", ", Names)}");
            return 2;
        }

        string own = Option("--own") ?? Path.Combine(Contender.Here, "src/PushSim.Cli/bin/Release/net10.0/PushSim.Cli.dll");
        var duel = new Duel(new Contender(path), new Contender(own), args.Contains("--short"));
        List<Figure> rows = [];
        foreach ((string name, Func<Duel, IEnumerable<Figure>> of) in s_parts.Where(p => parts.Length == 0 || parts.Contains(p.Name)))
        {
            foreach (Figure row in of(duel))
            {
                Console.WriteLine(row);
                rows.Add(row);
            }
        }

        FigureTable.Write(Option("--page") ?? Path.Combine(Contender.Here, "src/docs/measurements.md"), Form(duel), rows);
        return 0;
    }

    private static string Form(Duel duel)
    {
        string lanes = Runs.MatchBatch.BestLanes(Simulation.Precision.Single) + " floats";
        string form = duel.Own.Path.EndsWith(".dll", StringComparison.Ordinal) ? $"plain build under the JIT, {lanes} side by side" : "an executable, 8 floats side by side";
        return $"{form}, {Environment.ProcessorCount} processors, each value the least of its rounds{(duel.IsShort ? ", short" : "")}";
    }
}
