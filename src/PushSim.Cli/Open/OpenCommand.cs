using System.ComponentModel;
using System.Diagnostics;
using PushSim.Scenarios;
using PushSim.Workbench;

namespace PushSim.Cli.Open;

/// <summary>`pushsim open [FILE]`: the workbench in a browser.</summary>
internal static class OpenCommand
{
    /// <param name="starter">Makes the files of a starter robot.</param>
    /// <param name="page">Writes the page of a scenario.</param>
    /// <param name="output">Standard output.</param>
    /// <param name="error">Standard error.</param>
    /// <param name="cancel">Interrupt.</param>
    public static Command Create(
        Func<StarterAsk, (IReadOnlyList<(string Name, string Text)> Files, string Wrong)> starter, Func<string, ReadOptions, CancellationToken, string> page, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var file = new Argument<string?>("FILE") { Description = "Scenario or robot file; without one the start page.", Arity = ArgumentArity.ZeroOrOne };
        var noBrowser = new Option<bool>("--no-browser") { Description = "Only print the address." };
        var stay = new Option<bool>("--stay") { Description = "Go on after the last page was closed." };
        Option<long> port = CommonOptions.Whole("--port", "P", "Port on this machine; 0 takes a free one.", 0, 0, 65535);
        var command = new Command(
            "open",
            "Opens the workbench, live in your browser.\n\n"
            + "The same files, the same answers. It listens on this machine only and ends a\nminute after its last page.\n\n"
            + "Examples:\n  pushsim open\n  pushsim open scenarios/shove-heavy-grippy.toml\n  pushsim open mine.toml --no-browser --stay")
        {
            file, noBrowser, stay, port,
        };
        command.SetAction(parsed => Run(new WorkbenchOptions { File = parsed.GetValue(file), Port = (int)parsed.GetValue(port), Stays = parsed.GetValue(stay), Starter = starter, Page = page, Garage = GarageOption.Of(parsed) }, !parsed.GetValue(noBrowser), output, error, cancel));
        return command;
    }

    private static int Run(WorkbenchOptions options, bool hasBrowser, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        // a file with mistakes opens, to be mended; one that is not there does not
        if (options.File is string file && ScenarioReader.Check(file, new ReadOptions { Garage = options.Garage }) is { Files.Count: 0 } read)
        {
            ProblemWriter.Write(error, read.Problems);
            return ProblemWriter.Code(read.Problems, read.CannotRead) ?? ExitCode.CannotReadOrWrite;
        }

        return Serve(options, hasBrowser, output, error, cancel).GetAwaiter().GetResult();
    }

    private static async Task<int> Serve(WorkbenchOptions options, bool hasBrowser, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        await using WorkbenchServer server = await WorkbenchServer.Start(options);
        await output.WriteLineAsync(server.Address.ToString());
        await output.FlushAsync(cancel);
        if (hasBrowser)
        {
            ShowIn(server.Address, error);
        }

        var stop = new TaskCompletionSource();
        await using CancellationTokenRegistration stopped = cancel.Register(() => stop.TrySetResult());
        await Task.WhenAny(server.Ended, stop.Task);
        return ExitCode.Done;
    }

    private static void ShowIn(Uri address, TextWriter error)
    {
        try
        {
            ProcessStartInfo start = OperatingSystem.IsWindows() ? new ProcessStartInfo(address.ToString()) { UseShellExecute = true }
                : new ProcessStartInfo(OperatingSystem.IsMacOS() ? "open" : "xdg-open", [address.ToString()]) { RedirectStandardOutput = true, RedirectStandardError = true };
            Process.Start(start)?.Dispose();
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
            error.WriteLine("pushsim: no browser could be started; open the address above");
        }
    }
}
