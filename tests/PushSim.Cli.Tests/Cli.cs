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

/// <summary>A folder that goes with the test.</summary>
internal sealed class ScratchFolder : IDisposable
{
    public ScratchFolder() => Directory.CreateDirectory(Path);

    public string Path { get; } = System.IO.Path.Combine(System.IO.Path.GetTempPath(), "pushsim test " + Guid.NewGuid().ToString("N"));

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
