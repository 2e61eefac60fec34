using PushSim.Cli.Shared;
using PushSim.Files;

namespace PushSim.Cli.Tests.Faults;

/// <summary>What the commands do to their folders, act for act, without the computing between, so that tens of thousands of faults take minutes.</summary>
internal static class FolderWork
{
    private const string Row = "0,1,robot,line,0.5,1.2,tyres,motors,\"\"\n";

    public static readonly FaultCommand[] All =
    [
        new("results") { Work = root => Do(root, (folder, _) => Results(folder, "history.csv", "plot.png", "gains.csv")) },
        new("form") { Work = root => Do(root, (folder, _) => folder.WriteForm("plan.csv", "pull,tyre,force\n1,soft,\n")) },
        new("form, input inside", "@work/out/mine.csv")
        {
            Work = root => Do(
                root,
                (folder, _) =>
                {
                    folder.WriteForm("tyres.toml", "[tyre.soft]\n");
                    Results(folder, "plot.png");
                },
                reads: "work/out/mine.csv"),
        },
        new("matches")
        {
            Work = root => Do(
                root,
                (folder, path) =>
                {
                    Journal(folder, path, "part-1-of-1.csv");
                    Results(folder, "matches.csv", "plot.png");
                },
                after: path => Disk.Delete(Path.Combine(path, "part-1-of-1.csv"))),
        },
        new("odds part") { Work = root => Do(root, (folder, path) => Journal(folder, path, "part-1-of-2.csv"), piece: "part-1-of-2") },
        new("merge", "--merge")
        {
            Work = root => Do(root, (folder, path) =>
            {
                foreach (string part in new[] { "part-1-of-2.csv", "part-2-of-2.csv" })
                {
                    using Stream? rows = Disk.OpenOwn(Path.Combine(path, part));
                    rows?.CopyTo(Stream.Null);
                }

                Results(folder, "matches.csv", "plot.png");
            }),
        },
    ];

    private static Cli Do(string root, Action<OutputFolder, string> work, string? piece = null, string? reads = null, Action<string>? after = null)
    {
        using var error = new StringWriter();
        string path = Path.Combine(root, "work", "out");
        InputLog.Begin();
        try
        {
            if (reads is not null)
            {
                using OpenedFile file = ReadGate.Open(Path.Combine(root, reads));
                if (file.Stream is null)
                {
                    throw new IOException($"{reads} cannot be read: {file.State}");
                }

                file.Stream.CopyTo(Stream.Null);
            }

            bool isForced = File.Exists(Path.Combine(root, "force"));
            using (OutputFolder folder = OutputFolder.Open(path, isForced, "source", new LockAsk(path, "pushsim", error.WriteLine, CancellationToken.None), piece))
            {
                if (piece is null)
                {
                    folder.Begin();
                }

                work(folder, folder.Path);
                folder.Put([]);
                after?.Invoke(folder.Path);
            }

            return new Cli(0, "", error.ToString());
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.WriteLine(e.Message);
            return new Cli(4, "", error.ToString());
        }
        catch (Exception e)
        {
            return new Cli(1, "", $"{error}internal fault: {e}");
        }
    }

    private static void Results(OutputFolder folder, params string[] names)
    {
        foreach (string name in names)
        {
            folder.Write(name, s =>
            {
                for (int i = 0; i < 3; i++)
                {
                    s.Write(System.Text.Encoding.UTF8.GetBytes($"{name}, piece {i}\n"));
                }
            });
        }
    }

    private static void Journal(OutputFolder folder, string path, string name)
    {
        folder.Claim();
        WriteGate.Replace(Path.Combine(path, name), s => s.Write("# matches\n"u8));
        using WatchedStream journal = WriteGate.Append(Path.Combine(path, name));
        if (name.EndsWith("-2.csv", StringComparison.Ordinal))
        {
            folder.Share();
        }

        for (int i = 0; i < 2; i++)
        {
            journal.Write(System.Text.Encoding.UTF8.GetBytes(Row));
        }
    }
}
