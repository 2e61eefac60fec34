using System.Security.Cryptography;
using PushSim.Files;

namespace PushSim.Cli.Tests.Faults;

/// <summary>A folder with a command's inputs, an output folder in some state, and what the user would miss.</summary>
internal sealed class FaultPlace
{
    private readonly FaultCommand _command;

    public FaultPlace(string template, string root, FaultCommand command)
    {
        (Root, _command) = (root, command);
        Copy(template, root);
    }

    public string Root { get; }

    public string Out => Path.Combine(Root, "work", "out");

    /// <summary>A file of the user's outside of all that the command may touch.</summary>
    public string Precious => Path.Combine(Root, "precious.txt");

    /// <summary>A folder of the user's outside of all that the command may touch.</summary>
    public string PreciousFolder => Path.Combine(Root, "precious");

    /// <summary>Hashes of what the user would miss.</summary>
    public HashSet<string> Missed { get; } = new(StringComparer.Ordinal);

    /// <summary>Everything that is the user's: inputs, what lies outside, and what an output folder holds that no mark has the hash of.</summary>
    public void TakeStock()
    {
        OutputMark? mark = Directory.Exists(Out) ? OutputMark.Read(Out) : null;
        foreach (string file in Files(Root).Where(f => Path.GetFileName(f) != OutputMark.Name && !(_command.Name == "odds part" && Path.GetFileName(f).StartsWith("part-", StringComparison.Ordinal))))
        {
            string hash = Hash(file);
            bool isOurs = Path.GetDirectoryName(file) == Out && (mark?.Of(Path.GetFileName(file))?.Hash == hash);
            if (!isOurs)
            {
                Missed.Add(hash);
            }
        }
    }

    public string? FirstMissing()
    {
        HashSet<string> there = [.. Files(Root).Select(Hash)];
        return Missed.FirstOrDefault(h => !there.Contains(h));
    }

    /// <summary>The user adds a line to a result, or makes a file.</summary>
    public void Edit()
    {
        string? result = Directory.Exists(Out) ? Directory.GetFiles(Out).Order(StringComparer.Ordinal).FirstOrDefault(f => !Path.GetFileName(f).StartsWith('.') && !Path.GetFileName(f).StartsWith("part-", StringComparison.Ordinal) && !_command.Reads(f)) : null;
        string added = Path.Combine(Out, "added.txt");
        Directory.CreateDirectory(Out);
        File.WriteAllText(added, "added by the user " + Root);
        Missed.Add(Hash(added));
        if (result is not null)
        {
            Missed.Remove(Hash(result));
            File.AppendAllText(result, "a remark of the user\n");
            Missed.Add(Hash(result));
        }
    }

    /// <summary>Runs the command.</summary>
    /// <param name="interrupt">Seconds after which the user interrupts it [s]; null: never.</param>
    public Cli Run(double? interrupt = null)
    {
        using var user = new CancellationTokenSource();
        if (interrupt is double seconds)
        {
            user.CancelAfter(TimeSpan.FromSeconds(seconds));
        }

        return _command.Run(Root, user.Token);
    }

    public void Second()
    {
        Cli second = Run();
        Xunit.Assert.True(second.Code is 0 or 1 or 4, $"second: {second.Code} {second.Error}");
    }

    public static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (string folder in Directory.EnumerateDirectories(from, "*", SearchOption.AllDirectories))
        {
            Directory.CreateDirectory(to + folder[from.Length..]);
        }

        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            File.Copy(file, to + file[from.Length..]);
        }
    }

    // regular files, no link followed
    private static IEnumerable<string> Files(string folder)
    {
        foreach (string entry in Directory.EnumerateFileSystemEntries(folder))
        {
            switch (Disk.Look(entry))
            {
                case PathKind.File:
                    yield return entry;
                    break;
                case PathKind.Folder:
                    foreach (string file in Files(entry))
                    {
                        yield return file;
                    }

                    break;
            }
        }
    }

    private static string Hash(string file) => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(file)));
}
