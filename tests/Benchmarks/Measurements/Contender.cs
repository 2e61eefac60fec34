using System.Diagnostics;

namespace PushSim.Benchmarks.Measurements;

/// <summary>A built program that is measured: a DLL that `dotnet` starts, or an executable.</summary>
/// <param name="Path">Its file.</param>
internal sealed record Contender(string Path)
{
    /// <summary>Folder that holds its scenarios: the clone that the program was built in, else this one.</summary>
    public string Root { get; } = RootOf(System.IO.Path.GetFullPath(Path)) ?? RootOf(AppContext.BaseDirectory) ?? Environment.CurrentDirectory;

    /// <summary>The clone of this benchmark.</summary>
    public static string Here => RootOf(AppContext.BaseDirectory) ?? Environment.CurrentDirectory;

    /// <summary>Stands in a command for a folder that is new at each run: matches that lie there would not be played again.</summary>
    public const string Out = "{out}";

    /// <summary>Runs it once, in its own clone, and takes its output and what it cost.</summary>
    /// <param name="arguments">Words behind its name.</param>
    public (Cost Cost, string Output) Run(string arguments)
    {
        string folder = Directory.CreateTempSubdirectory("pushsim-measure-").FullName;
        arguments = arguments.Replace(Out, $"'{System.IO.Path.Combine(folder, "out")}'", StringComparison.Ordinal);
        string file = System.IO.Path.GetTempFileName();
        string program = Path.EndsWith(".dll", StringComparison.Ordinal) ? $"dotnet '{System.IO.Path.GetFullPath(Path)}'" : $"'{System.IO.Path.GetFullPath(Path)}'";
        var start = new ProcessStartInfo("bash") { WorkingDirectory = Root, RedirectStandardOutput = true };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add($"TIMEFORMAT='%3U %3S %3R'; {{ time {program} {arguments} > '{file}' 2>/dev/null ; }} 2>&1");
        using Process shell = Process.Start(start)!;
        double[] times = [.. shell.StandardOutput.ReadToEnd().Split(' ', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(double.Parse)];
        shell.WaitForExit();
        string output = File.ReadAllText(file);
        File.Delete(file);
        Directory.Delete(folder, recursive: true);
        return shell.ExitCode == 0 ? (new Cost(times[0] + times[1], times[2]), output) : throw new InvalidOperationException($"{program} {arguments} ended with {shell.ExitCode} in {Root}");
    }

    private static string? RootOf(string place)
    {
        for (DirectoryInfo? folder = new(System.IO.Path.GetDirectoryName(place)!); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(System.IO.Path.Combine(folder.FullName, "PushSim.sln")))
            {
                return folder.FullName;
            }
        }

        return null;
    }
}

/// <summary>What a whole process cost.</summary>
/// <param name="Cpu">Time of all cores, user and system [s].</param>
/// <param name="Wall">Time from start to end [s].</param>
internal readonly record struct Cost(double Cpu, double Wall)
{
    /// <summary>The lesser of both, each by itself.</summary>
    public Cost Least(Cost other) => new(Math.Min(Cpu, other.Cpu), Math.Min(Wall, other.Wall));
}
