using System.Globalization;

namespace PushSim.Cli.Tests;

/// <summary>Runs a command line in this process and keeps what it printed.</summary>
internal sealed record Cli(int Code, string Output, string Error)
{
    public static Cli Run(params string[] args)
    {
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        int code = CommandLineApp.Invoke(args, output, error);
        return new Cli(code, output.ToString(), error.ToString());
    }
}
