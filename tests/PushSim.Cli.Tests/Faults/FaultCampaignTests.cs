using System.Collections.Concurrent;
using System.Diagnostics;
using PushSim.Cli.Shared;
using PushSim.Files;
using Xunit;

namespace PushSim.Cli.Tests.Faults;

/// <summary>
/// A fault at any act on the disk, over output folders in any state. Whatever happens: every byte that the user had is still somewhere, the command ends with a sentence and a code of
/// its own, and the same command once more mends all. The acts of the commands' folders without their computing are tried by the thousand (PUSHSIM_FOLDER_FAULTS), beyond all single
/// ones with a second fault while the first is mended; whole commands too (PUSHSIM_FAULTS). PUSHSIM_FAULT_SEED shuffles them, PUSHSIM_FAULT_COMMANDS names a few with commas between,
/// PUSHSIM_FAULTS_DONE leaves out so many of the first, which an earlier piece of the campaign tried; a table is printed.
/// </summary>
public class FaultCampaignTests(ITestOutputHelper output)
{
    /// <summary>How long a lock is waited for [s].</summary>
    internal const double Patience = 2.0;

    // far above what the fits of the campaign take on a free machine [s]
    private const double Impatience = 3.0;

    private static readonly string[]? s_names = Environment.GetEnvironmentVariable("PUSHSIM_FAULT_COMMANDS")?.Split(',');
    private static readonly int s_seed = Given("PUSHSIM_FAULT_SEED", 28);

    [Fact]
    public void Whole_commands() => Campaign([.. FaultCommand.All.Where(c => s_names?.Contains(c.Name) != false)], Given("PUSHSIM_FAULTS", 36));

    [Fact]
    public void What_commands_do_to_their_folders() => Campaign(FolderWork.All, Given("PUSHSIM_FOLDER_FAULTS", 300));

    private static int Given(string name, int usual) => int.TryParse(Environment.GetEnvironmentVariable(name), out int n) ? n : usual;

    private void Campaign(FaultCommand[] commands, int count)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "plants links and pipes");
        int done = Given("PUSHSIM_FAULTS_DONE", 0);
        using var scratch = new ScratchFolder();
        List<(FaultCommand Command, string State, string Template, int Acts)> scenes = [.. Scenes(commands, scratch)];
        var random = new Random(s_seed);
        (int Scene, FaultKind Kind, int At, FaultKind? Then, int ThenAt)[] all = [.. scenes.SelectMany((s, i) => Enum.GetValues<FaultKind>().SelectMany(k => Enumerable.Range(1, s.Acts).Select(at => (i, k, at, (FaultKind?)null, 0))))];
        random.Shuffle(all);

        // beyond the single ones a second fault while the first is mended, of the kinds that a machine has by itself
        FaultKind[] second = [FaultKind.Fails, FaultKind.Full, FaultKind.Short, FaultKind.Killed];
        (int Scene, FaultKind Kind, int At, FaultKind? Then, int ThenAt)[] tried =
        [
            .. all.Skip(done).Take(count),
            .. Enumerable.Range(0, Math.Max(0, done + count - all.Length)).Select(_ => all[random.Next(all.Length)]).Select(f => f with { Then = second[random.Next(second.Length)], ThenAt = 1 + random.Next(scenes[f.Scene].Acts) }),
        ];
        ConcurrentDictionary<(string, FaultKind), (int Done, int Refused)> table = new();
        ConcurrentBag<string> wrong = [];
        long start = Stopwatch.GetTimestamp();
        Parallel.ForEach(tried.Select((f, i) => (Fault: f, Number: i)), new ParallelOptions { MaxDegreeOfParallelism = 2 }, f =>
        {
            (FaultCommand command, string state, string template, _) = scenes[f.Fault.Scene];
            string root = scratch[$"fault {f.Number}"];
            (string? problem, int code) = Try(new FaultPlace(template, root, command), command, f.Fault.Kind, f.Fault.At, f.Fault.Then, f.Fault.ThenAt);
            if (problem is not null)
            {
                wrong.Add($"{command.Name}, {state}, {f.Fault.Kind} at act {f.Fault.At}{(f.Fault.Then is null ? "" : $", then {f.Fault.Then} at {f.Fault.ThenAt}")}: {problem}");
            }

            table.AddOrUpdate((command.Name, f.Fault.Kind), _ => code == 0 ? (1, 0) : (0, 1), (_, t) => code == 0 ? (t.Done + 1, t.Refused) : (t.Done, t.Refused + 1));
            Directory.Delete(root, recursive: true);
        });

        FaultKind[] kinds = Enum.GetValues<FaultKind>();
        output.WriteLine($"{tried.Length} faults from {done} on, {tried.Count(t => t.Then is not null)} of them with a second one; {all.Length} single ones there are; seed {s_seed}, {Stopwatch.GetElapsedTime(start).TotalSeconds:0} s; done/ended with a sentence");
        output.WriteLine("| command | acts | " + string.Join(" | ", kinds) + " |");
        foreach (string name in scenes.Select(s => s.Command.Name).Distinct())
        {
            output.WriteLine($"| {name} | {string.Join(", ", scenes.Where(s => s.Command.Name == name).Select(s => s.Acts))} | " + string.Join(" | ", kinds.Select(k => table.TryGetValue((name, k), out (int Done, int Refused) t) ? $"{t.Done}/{t.Refused}" : "")) + " |");
        }

        Assert.True(wrong.IsEmpty, $"{wrong.Count} wrong:\n" + string.Join('\n', wrong.Order(StringComparer.Ordinal).Take(40)));
    }

    private static IEnumerable<(FaultCommand Command, string State, string Template, int Acts)> Scenes(FaultCommand[] commands, ScratchFolder scratch)
    {
        foreach (FaultCommand command in commands)
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

    private static (string? Problem, int Code) Try(FaultPlace place, FaultCommand command, FaultKind kind, int at, FaultKind? then, int thenAt)
    {
        place.TakeStock();
        bool isPlanted = kind is FaultKind.Link or FaultKind.Pipe;

        // a command waits for the other end of a pipe that stands in place of a log, until the user interrupts it
        double? interrupt = kind == FaultKind.Pipe && command.Waits ? Impatience : null;
        Disk.Watch(new FaultWatch(kind, at, place));
        LockAsk.Patience(Patience);
        Cli run;
        try
        {
            run = place.Run(interrupt);
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
        if (run.Code is not (0 or 4) && !(run.Code == ExitCode.Interrupted && interrupt is not null) && !(run.Code is 1 or 3 && (isPlanted || kind == FaultKind.User)))
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

        if (then is FaultKind second)
        {
            Disk.Watch(new FaultWatch(second, thenAt, place));
            LockAsk.Patience(0.2);
            said += $"; then {place.Run().Code}";
            Disk.Watch(null);
            LockAsk.Patience(null);
            if (place.FirstMissing() is not null)
            {
                return ("bytes of the user are gone after the second fault: " + said, run.Code);
            }
        }

        // the same once more, undisturbed
        LockAsk.Patience(0.2);
        Cli again = place.Run(interrupt);
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
