using System.Diagnostics;

namespace PushSim.Cli.Tests;

/// <summary>A line of bash and what it printed.</summary>
internal sealed record Shell(int Code, string Output, string Error)
{
    public static async Task<Shell> RunAsync(string line, params string[] args)
    {
        if (!File.Exists("/bin/bash"))
        {
            return new Shell(-1, "", "no bash");
        }

        using Process process = Process.Start(new ProcessStartInfo("/bin/bash", ["-c", line, "bash", .. args]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return new Shell(process.ExitCode, await output, await error);
    }
}
