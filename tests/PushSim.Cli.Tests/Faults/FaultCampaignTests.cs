using System.Collections.Concurrent;
using System.Diagnostics;
using PushSim.Files;
using Xunit;

namespace PushSim.Cli.Tests.Faults;

/// <summary>
/// A fault at any act on the disk of any command, over output folders in any state. Whatever happens: every byte that the user had is still somewhere, the command ends with a
/// sentence and a code of its own, and the same command once more mends all. PUSHSIM_FAULTS=20000 tries so many, PUSHSIM_FAULT_SEED chooses them; a table of them is printed.
/// </summary>
public class FaultCampaignTests(ITestOutputHelper output)
{
    private static readonly int s_faults = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_FAULTS"), out int n) ? n : 160;
    private static readonly int s_seed = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_FAULT_SEED"), out int n) ? n : 28;

    [Fact]
    public void Every_byte_the_user_had_is_still_somewhere()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "plants links and pipes");
        using var scratch = new ScratchFolder();
        List<(FaultCommand Command, string State, string Template, int Acts)> scenes = [.. Scenes(scratch)];
        (int Scene, FaultKind Kind, int At)[] all = [.. scenes.SelectMany((s, i) => Enum.GetValues<FaultKind>().SelectMany(k => Enumerable.Range(1, s.Acts).Select(at => (i, k, at))))];
        new Random(s_seed).Shuffle(all);
        ConcurrentDictionary<(string, FaultKind), (int Done, int Refused)> table = new();
        ConcurrentBag<string> wrong = [];
        long start = Stopwatch.GetTimestamp();
        Parallel.ForEach(all.Take(s_faults).Select((f, i) => (Fault: f, Number: i)), new ParallelOptions { MaxDegreeOfParallelism = 2 }, f =>
        {
            (FaultCommand command, string state, string template, _) = scenes[f.Fault.Scene];
            string root = scratch[$"fault {f.Number}"];
            (string? problem, int code) = Try(new FaultPlace(template, root, command), command, f.Fault.Kind, f.Fault.At);
            if (problem is not null)
            {
                wrong.Add($"{command.Name}, {state}, {f.Fault.Kind} at act {f.Fault.At}: {problem}");
            }

            table.AddOrUpdate((command.Name, f.Fault.Kind), _ => code == 0 ? (1, 0) : (0, 1), (_, t) => code == 0 ? (t.Done + 1, t.Refused) : (t.Done, t.Refused + 1));
            Directory.Delete(root, recursive: true);
        });

        FaultKind[] kinds = Enum.GetValues<FaultKind>();
        output.WriteLine($"{Math.Min(s_faults, all.Length)} of {all.Length} faults, seed {s_seed}, {Stopwatch.GetElapsedTime(start).TotalSeconds:0} s; done/ended with a sentence");
        output.WriteLine("| command | " + string.Join(" | ", kinds) + " |");
        foreach (string name in scenes.Select(s => s.Command.Name).Distinct())
        {
            output.WriteLine($"| {name} | " + string.Join(" | ", kinds.Select(k => table.TryGetValue((name, k), out (int Done, int Refused) t) ? $"{t.Done}/{t.Refused}" : "")) + " |");
        }

        Assert.True(wrong.IsEmpty, $"{wrong.Count} wrong:\n" + string.Join('\n', wrong.Order(StringComparer.Ordinal).Take(40)));
    }

    private static IEnumerable<(FaultCommand Command, string State, string Template, int Acts)> Scenes(ScratchFolder scratch)
    {
        foreach (FaultCommand command in FaultCommand.All)
        {
            foreach (string state in FaultCommand.States)
            {
                string template = scratch[$"{command.Name} {state}"];
                FaultCommand prepared = command.Prepare(template, state);
                var place = new FaultPlace(template, scratch["count"], prepared);
                var counting = new FaultWatch(FaultKind.Fails, 0, place);
                Disk.Watch(counting);
                Cli run = place.Run();
                Disk.Watch(null);
                Directory.Delete(place.Root, recursive: true);
                Assert.True(run.Code == 0, $"{command.Name} {state}: {run.Code} {run.Error}");
                yield return (prepared, state, template, counting.Count);
            }
        }
    }

    private static (string? Problem, int Code) Try(FaultPlace place, FaultCommand command, FaultKind kind, int at)
    {
        place.TakeStock();
        bool isPlanted = kind is FaultKind.Link or FaultKind.Pipe;
        Disk.Watch(new FaultWatch(kind, at, place));
        LockAsk.Patience(2.0);
        Cli run;
        try
        {
            run = place.Run();
        }
        catch (Exception e)
        {
            return ("threw " + e, -1);
        }
        finally
        {
            Disk.Watch(null);
            LockAsk.Patience(null);
        }

        string said = $"{run.Code} {run.Error}";
        if (run.Code is not (0 or 4) && !(run.Code is 1 or 3 && (isPlanted || kind == FaultKind.User)))
        {
            return ("ended with " + said, run.Code);
        }

        if (run.Error.Contains("   at ") || run.Error.Contains("internal fault") || (run.Code != 0 && run.Error.Length == 0))
        {
            return ("said " + said, run.Code);
        }

        if (place.FirstMissing() is not null)
        {
            return ("bytes of the user are gone: " + said, run.Code);
        }

        // the same once more, undisturbed
        LockAsk.Patience(0.2);
        Cli again = place.Run();
        LockAsk.Patience(null);
        string more = $"{said}; then {again.Code} {again.Error}";
        return place.FirstMissing() is not null ? ("bytes of the user are gone afterwards: " + more, run.Code)
            : again.Code != 0 && !isPlanted && kind != FaultKind.User ? ("is not mended: " + more, run.Code)
            : again.Code == 0 && !isPlanted && Unmended(place, command) is string left ? (left + ": " + more, run.Code)
            : (null, run.Code);
    }

    // Every file of the mark is there as it was written, and nothing of ours beside the folder
    private static string? Unmended(FaultPlace place, FaultCommand command)
    {
        if (command.Name is "new" or "odds part")
        {
            return null;
        }

        OutputMark? mark = OutputMark.Read(place.Out);
        return mark is not { State: OutputState.Whole } ? "no whole result"
            : mark.Entries.FirstOrDefault(e => Disk.Hash(Path.Combine(place.Out, e.Name)) != e.Hash) is OutputEntry wrong ? wrong.Name + " is not as written"
            : Directory.GetFileSystemEntries(Path.GetDirectoryName(place.Out)!).Length > 1 ? "left beside: " + string.Join(", ", Directory.GetFileSystemEntries(Path.GetDirectoryName(place.Out)!).Select(Path.GetFileName))
            : null;
    }
}
