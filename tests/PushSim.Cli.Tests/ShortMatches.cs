using System.Diagnostics;

namespace PushSim.Cli.Tests;

/// <summary>A folder with the shipped robots and a match of 0.3 s, and commands on it.</summary>
internal static class ShortMatches
{
    // nose to nose, decided by what 0.3 s bring: a few milliseconds
    private const string Match = "question = \"Short\"\nrobot = \"robots/mole.toml\"\n[manoeuvre]\nkind = \"shove\"\nend = \"0.3 s\"\nstart = \"0.01 s\"\n[shove]\ngap = \"2 mm\"\ndeciding_ground = \"5 mm\"\n[opponent]\nrobot = \"robots/mole.toml\"\nstart = \"0.01 s\"\n";

    /// <summary>Environment variable of the runtime that, set to 0, takes the wide instructions away.</summary>
    public const string Narrow = "DOTNET_EnableAVX2";

    public static ScratchFolder Files(string more = "")
    {
        var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["robots"]);
        foreach (string robot in Directory.EnumerateFiles(Path.Combine(Repository.Root, "scenarios", "robots")))
        {
            File.Copy(robot, scratch["robots/" + Path.GetFileName(robot)]);
        }

        File.WriteAllText(scratch["short.toml"], Match + more);
        return scratch;
    }

    /// <summary>Starts the program in the folder as a process of its own, without wide instructions: the bits are the same and half as much is compiled.</summary>
    public static Process Start(ScratchFolder scratch, params string[] args) => Start(scratch, Narrow, args);

    /// <summary>Starts it with an environment variable set to 0.</summary>
    public static Process Start(ScratchFolder scratch, string off, string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(CommandLineApp).Assembly.Location, .. args]) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = scratch.Path };
        start.Environment[off] = "0";
        return Process.Start(start)!;
    }

    /// <summary>Waits for its end.</summary>
    public static (int Code, string Error) Finish(Process process)
    {
        using (process)
        {
            process.OutputDataReceived += (_, _) => { };
            process.BeginOutputReadLine();
            string error = process.StandardError.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, error);
        }
    }
}
