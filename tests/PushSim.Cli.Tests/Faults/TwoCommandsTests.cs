using PushSim.Files;
using Xunit;

namespace PushSim.Cli.Tests.Faults;

/// <summary>Every command beside every other one on one folder. PUSHSIM_PAIRS=1 tries all pairs; the usual run each with itself and with the next.</summary>
public class TwoCommandsTests
{
    public static TheoryData<string, string> Pairs
    {
        get
        {
            string[] names = [.. FaultCommand.All.Select(c => c.Name).Where(n => n is not "odds merge")];
            bool isAll = Environment.GetEnvironmentVariable("PUSHSIM_PAIRS") == "1";
            TheoryData<string, string> pairs = [];
            foreach ((int i, int j) in names.SelectMany((_, i) => Enumerable.Range(0, names.Length).Select(j => (i, j))).Where(p => isAll || p.j == p.i || p.j == (p.i + 1) % names.Length))
            {
                pairs.Add(names[i], names[j]);
            }

            return pairs;
        }
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public async Task One_waits_for_the_other_and_both_end_well(string one, string other)
    {
        using var scratch = new ScratchFolder();
        FaultCommand[] both = [.. new[] { one, other }.Select(n => FaultCommand.All.First(c => c.Name == n))];
        string root = scratch["place"];
        both[1].Prepare(root, "none");
        if (one == "fit inside")
        {
            Directory.CreateDirectory(Path.Combine(root, "work", "out"));
            File.Copy(Path.Combine(root, "readings.csv"), Path.Combine(root, "work", "out", "mine.csv"), overwrite: true);
        }

        var place = new FaultPlace(root, scratch["copy"], both[0]);
        place.TakeStock();
        Cli[] ends = await Task.WhenAll(both.Select(c => Task.Run(() => Cli.Run(c.Args(place.Root)))));

        // a folder that holds files of the user, as `new` makes them, is refused; nothing else is
        bool mayRefuse = both.Any(c => c.Name is "new" or "fit inside");
        Assert.All(ends, e => Assert.True(e.Code == 0 || (mayRefuse && e.Code == 4), $"{e.Code} {e.Error}"));
        Assert.Contains(ends, e => e.Code == 0);
        Assert.Null(place.FirstMissing());
        if (OutputMark.Read(place.Out) is OutputMark mark)
        {
            Assert.All(mark.Entries, e => Assert.Equal(e.Hash, Disk.Hash(Path.Combine(place.Out, e.Name))));
        }

        Assert.Equal(["out"], Directory.GetFileSystemEntries(Path.GetDirectoryName(place.Out)!).Select(Path.GetFileName));
    }
}
