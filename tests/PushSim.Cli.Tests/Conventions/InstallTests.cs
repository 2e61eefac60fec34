using System.Diagnostics;
using Xunit;

namespace PushSim.Cli.Tests.Conventions;

/// <summary>The package that the README packs installs and runs.</summary>
public class InstallTests
{
    /// <summary>The README's lines, in order.</summary>
    public static readonly string[] Commands =
    [
        "dotnet pack -c Release src/PushSim.Cli -o dist",
        "dotnet tool install PushSim.Cli --global --add-source dist",
    ];

    // into folders of the test, from the assemblies that were just built
    [Fact]
    public async Task The_tool_is_packed_installed_and_tells_its_version()
    {
        using var scratch = new ScratchFolder();
        await Done(Commands[0].Replace("-o dist", $"--no-build -o \"{scratch["dist"]}\"", StringComparison.Ordinal));
        await Done(Commands[1].Replace("--global", $"--tool-path \"{scratch["tools"]}\"", StringComparison.Ordinal).Replace("source dist", $"source \"{scratch["dist"]}\"", StringComparison.Ordinal));
        string program = Path.Combine(scratch["tools"], OperatingSystem.IsWindows() ? "pushsim.exe" : "pushsim");
        string said = await Done($"\"{program}\" explain chatter");
        Assert.Contains("chatter", said, StringComparison.Ordinal);
        await Serves(program, scratch.Path);
    }

    // the page, its modules and the open file come out of the package
    private static async Task Serves(string program, string folder)
    {
        File.Copy(Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml"), Path.Combine(folder, "mole.toml"));
        var start = new ProcessStartInfo(program, ["open", "mole.toml", "--no-browser", "--stay"]) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        try
        {
            var address = new Uri(await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) ?? "");
            using var client = new HttpClient { BaseAddress = new Uri(address.GetLeftPart(UriPartial.Authority)) };
            Assert.Contains("/static/app.js", await client.GetStringAsync(address, TestContext.Current.CancellationToken), StringComparison.Ordinal);
            foreach (string shared in new[] { "/static/app.js", "/static/motion.js", "/static/tokens.css", "/static/vendor/preact.js" })
            {
                Assert.NotEmpty(await client.GetByteArrayAsync(new Uri(shared, UriKind.Relative), TestContext.Current.CancellationToken));
            }

            Assert.Contains("chassis.mass", await client.GetStringAsync(new Uri("/api/state", UriKind.Relative), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        }
    }

    private static async Task<string> Done(string line)
    {
        (string shell, string flag) = OperatingSystem.IsWindows() ? ("cmd", "/c") : ("/bin/sh", "-c");
        var start = new ProcessStartInfo(shell, [flag, line]) { WorkingDirectory = Repository.Root, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{line}\n{output}{await error}");
        return output;
    }
}
