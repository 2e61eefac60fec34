using System.Globalization;

namespace PushSim.Cli.Tests;

/// <summary>Runs a command line in this process and keeps what it printed.</summary>
internal sealed record Cli(int Code, string Output, string Error)
{
    public static Cli Run(params string[] args) => Run(CancellationToken.None, args);

    /// <summary>A document without its lines that tell how long something took.</summary>
    public static string Steady(string json) => string.Join('\n', json.ReplaceLineEndings("\n").Split('\n').Where(l => !l.Contains("_ms\"", StringComparison.Ordinal) && !l.Contains("_per_second\"", StringComparison.Ordinal))).Trim();

    /// <summary>Runs it until it ends or the user interrupts it.</summary>
    public static Cli Run(CancellationToken cancel, string[] args)
    {
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        int code = CommandLineApp.Invoke(args, output, error, cancel);
        return new Cli(code, output.ToString(), error.ToString());
    }
}
