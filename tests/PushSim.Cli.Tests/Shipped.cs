using System.Collections.Concurrent;
using System.Text.Json;

namespace PushSim.Cli.Tests;

/// <summary>`run` of a shipped scenario as a person and as a script calls it, each done once for all tests that look at it, with the files it wrote.</summary>
internal sealed record Shipped(Cli Cli, string Folder)
{
    private static readonly ScratchFolder s_folder = new();
    private static readonly ConcurrentDictionary<string, Lazy<Shipped>> s_runs = new();
    private static int s_number;

    static Shipped() => AppDomain.CurrentDomain.ProcessExit += (_, _) => s_folder.Dispose();

    /// <summary>A file that it wrote.</summary>
    public string this[string file] => Path.Combine(Folder, file);

    /// <summary>The document that it printed.</summary>
    public JsonElement Root => JsonDocument.Parse(Cli.Output).RootElement;

    /// <summary>`run FILE`, pictures among its files.</summary>
    public static Shipped Text(string name, params string[] more) => Of(name, more);

    /// <summary>`run FILE --details` without pictures: all tables.</summary>
    public static Shipped Details(string name) => Of(name, ["--details", "--no-plots"]);

    /// <summary>`run FILE --json` with a folder for its files.</summary>
    public static Shipped Json(string name, params string[] more) => Of(name, ["--json", .. more]);

    private static Shipped Of(string name, string[] more) => s_runs.GetOrAdd(string.Join(' ', [name, .. more]), _ => new Lazy<Shipped>(() =>
    {
        string folder = s_folder[$"out put {Interlocked.Increment(ref s_number)}"];
        return new Shipped(Cli.Run(["run", Repository.Scenario(name), .. more, "--format", "png,svg", "--out", folder]), folder);
    })).Value;
}
