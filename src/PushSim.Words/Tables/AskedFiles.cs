namespace PushSim.Words.Tables;

/// <summary>The files that an answer was asked about, as the user named them, and the commands that tell more of the same.</summary>
/// <param name="File">File or name of the robot or scenario; empty: nothing is suggested.</param>
public sealed record AskedFiles(string File)
{
    /// <summary>Files that nobody can name again.</summary>
    public static AskedFiles Unknown { get; } = new("");

    /// <summary>Whether a command can name them.</summary>
    public bool IsKnown => File.Length > 0;

    /// <summary>The opponent named behind the file; null: the scenario has it, or there is none.</summary>
    public string? Opponent { get; init; }

    /// <summary>The scenario that two robots meet in; null: a plain shove, or the file is one.</summary>
    public string? Scene { get; init; }

    /// <summary>Folder of the garage that was named; null: the nearest one upwards.</summary>
    public string? Garage { get; init; }

    /// <summary>Values set anew.</summary>
    public IReadOnlyList<(string Path, string Value)> Set { get; init; } = [];

    /// <summary>Drawn matches of the same.</summary>
    /// <param name="tells">What they tell.</param>
    public Suggestion Odds(string tells) => new(tells, CommandLine.Of("odds", Words, Garage));

    /// <summary>What limits the same robot, and what a change is worth.</summary>
    /// <param name="tells">What it tells.</param>
    public Suggestion Limits(string tells) => new(tells, CommandLine.Of("limits", Words, Garage));

    /// <summary>Which numbers of the files are estimated.</summary>
    /// <param name="tells">What it tells.</param>
    public Suggestion Derived(string tells) => new(tells, CommandLine.Of("check", ["--derived", .. Files], Garage));

    private IEnumerable<string> Files => Opponent is null ? [CommandLine.File(File)] : [CommandLine.File(File), CommandLine.File(Opponent)];

    private IEnumerable<string> Words => [.. Files, .. Scene is null ? Array.Empty<string>() : ["--scene", CommandLine.File(Scene)], .. Set.SelectMany(s => new[] { "--set", $"{s.Path}={s.Value}" })];
}
