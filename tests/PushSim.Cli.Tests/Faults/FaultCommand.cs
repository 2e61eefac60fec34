namespace PushSim.Cli.Tests.Faults;

/// <summary>A command that writes into work/out, small enough to be run thousands of times.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Line">Its arguments, "@" before a file of the place.</param>
internal sealed record FaultCommand(string Name, params string[] Line)
{
    private const string Log = "pull,tyre,force [gf],peak [gf]\n1,soft,900,980\n2,hard,700,760\n3,soft,905,985\n4,hard,702,764\n5,soft,897,978\n6,hard,699,758\n";

    public static readonly FaultCommand[] All =
    [
        new("run", "run", "@launch.toml", "--no-plots", "--quiet", "--out", "@work/out"),
        new("limits", "limits", "@robots/mole.toml", "--no-plots", "--quiet", "--out", "@work/out"),
        new("odds", "odds", "@short.toml", "--matches", "6", "--threads", "1", "--no-plots", "--quiet", "--out", "@work/out"),
        new("odds part", "odds", "@short.toml", "--matches", "6", "--threads", "1", "--no-plots", "--quiet", "--part", "1/2", "--out", "@work/out"),
        new("odds merge", "odds", "@short.toml", "--matches", "6", "--threads", "1", "--no-plots", "--quiet", "--merge", "--out", "@work/out"),
        new("sweep", "sweep", "@short.toml", "--vary", "chassis.mass=1.2 kg..1.5 kg", "--points", "2", "--odds", "3", "--threads", "1", "--no-plots", "--quiet", "--out", "@work/out"),
        new("ladder", "ladder", "@robots/mole.toml", "@robots/vole.toml", "--scene", "@short.toml", "--matches", "4", "--threads", "1", "--no-plots", "--quiet", "--out", "@work/out"),
        new("fit", "fit", "@readings.csv", "--load", "1360 gf", "--no-plots", "--quiet", "--out", "@work/out"),
        new("fit inside", "fit", "@work/out/mine.csv", "--load", "1360 gf", "--no-plots", "--quiet", "--force", "--out", "@work/out"),
        new("fit of weighings", "fit", Shipped("logs/weighings.csv"), "--robot", Shipped("tyre-wear.toml"), "--quiet", "--out", "@work/out"),
        new("compare", "compare", Shipped("logs/drive.csv"), Shipped("gopher-launch.toml"), "--no-plots", "--quiet", "--out", "@work/out"),
        new("plan", "plan", "soft", "hard", "--quiet", "--out", "@work/out"),
        new("new", "new", "--quiet", "--force", "--out", "@work/out"),
    ];

    /// <summary>A scenario that costs next to nothing.</summary>
    public const string Launch = "question = \"Short\"\nrobot = \"robots/mole.toml\"\n[manoeuvre]\nkind = \"launch\"\nthrottle = 1.0\nstart = \"0.01 s\"\nend = \"0.1 s\"\n";

    /// <summary>States of the output folder before the command: nothing, its own result, that with what the user did to it, and a folder of the user's (with --force).</summary>
    public static readonly string[] States = ["none", "own", "mine", "foreign"];

    public override string ToString() => Name;

    public string[] Args(string root) => [.. Line.Select(a => a.StartsWith('@') ? Path.Combine(root, a[1..]) : a), .. IsForced ? (string[])["--force"] : []];

    public bool IsForced { get; init; }

    /// <summary>What is done in place of a command line; null: the line is run.</summary>
    public Func<string, Cli>? Work { get; init; }

    /// <summary>Whether it reads a log, which may come from a pipe: for that it waits.</summary>
    public bool Waits => Line.Any(a => a.StartsWith('@') && a.EndsWith(".csv", StringComparison.Ordinal));

    public Cli Run(string root, CancellationToken cancel = default) => Work?.Invoke(root) ?? Cli.Run(cancel, Args(root));

    public bool Reads(string file) => Line.Any(a => a.StartsWith('@') && a.EndsWith(Path.GetFileName(file), StringComparison.Ordinal));

    private static string Shipped(string file) => Path.Combine(Repository.Root, "scenarios", file);

    /// <summary>Makes a place in a state.</summary>
    public FaultCommand Prepare(string root, string state)
    {
        FaultCommand command = state == "foreign" && !Line.Contains("--force") ? this with { IsForced = true } : this;
        Directory.CreateDirectory(Path.Combine(root, "robots"));
        Directory.CreateDirectory(Path.Combine(root, "work"));
        Directory.CreateDirectory(Path.Combine(root, "precious"));
        File.WriteAllText(Path.Combine(root, "precious", "history.csv"), "of the user, elsewhere");
        File.WriteAllText(Path.Combine(root, "precious.txt"), "precious");
        File.WriteAllText(Path.Combine(root, "readings.csv"), Log);
        File.WriteAllText(Path.Combine(root, "launch.toml"), Launch);
        if (command.IsForced || (Work is not null && Line.Length > 0))
        {
            File.WriteAllText(Path.Combine(root, "force"), "");
        }

        if (Work is null)
        {
            using ScratchFolder files = ShortMatches.Files();

            // shorter yet: what is played does not matter here
            File.WriteAllText(Path.Combine(root, "short.toml"), File.ReadAllText(files["short.toml"]).Replace("end = \"0.3 s\"", "end = \"0.05 s\"", StringComparison.Ordinal));
            foreach (string robot in new[] { "mole.toml", "vole.toml" })
            {
                File.Copy(files["robots/" + robot], Path.Combine(root, "robots", robot));
            }
        }

        string folder = Path.Combine(root, "work", "out");
        if (Line.Contains("@work/out/mine.csv"))
        {
            Directory.CreateDirectory(folder);
            File.WriteAllText(Path.Combine(folder, "mine.csv"), Log + "7,soft,901,981\n");
        }

        if (Line.Contains("--merge") && Work is not null)
        {
            Directory.CreateDirectory(folder);
            File.WriteAllText(Path.Combine(folder, "part-1-of-2.csv"), "# first part");
            File.WriteAllText(Path.Combine(folder, "part-2-of-2.csv"), "# second part");
        }
        else if (Line.Contains("--merge"))
        {
            foreach (string k in new[] { "1/2", "2/2" })
            {
                Cli part = Cli.Run([.. Args(root).Where(a => a is not "--merge"), "--part", k]);
                Xunit.Assert.True(part.Code == 0, part.Error);
            }
        }

        if (state is "own" or "mine")
        {
            Cli first = command.Run(root);
            Xunit.Assert.True(first.Code == 0, first.Error);
        }

        if (state == "mine")
        {
            File.WriteAllText(Path.Combine(folder, "notes.txt"), "notes of the user");
            Directory.CreateDirectory(Path.Combine(folder, "more"));
            File.WriteAllText(Path.Combine(folder, "more", "deep.txt"), "deep notes of the user");
            foreach (string file in Directory.GetFiles(folder).Where(f => !Path.GetFileName(f).StartsWith('.') && !Path.GetFileName(f).StartsWith("part-", StringComparison.Ordinal) && Path.GetFileName(f) is not ("notes.txt" or "mine.csv")))
            {
                File.AppendAllText(file, "changed by the user\n");
            }
        }

        if (state == "foreign")
        {
            Directory.CreateDirectory(folder);
            foreach (string name in new[] { "history.csv", "matches.csv", "tyres.toml", "plan.csv", "pairs.csv", "sweep.csv", "gains.csv", "letter.txt" })
            {
                File.WriteAllText(Path.Combine(folder, name), "the user's own " + name);
            }
        }

        return command;
    }
}
