using CsCheck;
using PushSim.Cli.Tests;
using PushSim.Scenarios.Editing;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Scenes;
using PushSim.Workbench.Designs;
using Xunit;

namespace PushSim.Workbench.Tests.Server;

/// <summary>Saved files differ from the originals only in the changed values. What a file must still say is told by reading it anew.</summary>
public class EditTests
{
    private const int Edits = 200;

    private static readonly string[] s_files = [.. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml", SearchOption.AllDirectories).Where(f => Path.GetFileName(f) != "garage.toml").Order(StringComparer.Ordinal)];

    // 200 random values of all shipped files, in three ways to end lines and with a byte-order mark or without.
    [Fact]
    public void Two_hundred_random_edits_change_only_the_values()
    {
        int done = 0;
        Gen.Select(Gen.Int[0, s_files.Length - 1], Gen.Int[0, 1000], Gen.Double[0.0, 1.0], Gen.Int[0, 2], Gen.Bool).Sample(
            (file, place, share, ends, mark) =>
            {
                using var folder = new ScratchFolder();
                string main = Copy(folder, s_files[file], ends, mark);
                Dictionary<string, byte[]> before = Directory.GetFiles(folder.Path, "*.toml", SearchOption.AllDirectories).ToDictionary(f => f, File.ReadAllBytes);
                Design design = DesignFiles.Open(main, out ReadResult read)!;
                EditRow[] rows = [.. EditRows.Of(read).Where(r => r.Line > 0 && r.Source == EditSource.File)];
                EditRow row = rows[place % rows.Length];
                string text = row.Value is null ? row.Choices[place % row.Choices.Count] : row.Written(row.Low!.Value + (share * (row.High!.Value - row.Low.Value)));
                Design? next = design.With(row, text, read);
                Assert.NotNull(next);
                Keeper.Save(next, out IReadOnlyList<string> _);

                // no file but those with the value, and of them no line but that of the value, nor the rest of that line
                int lines = 0;
                foreach ((string path, byte[] old) in before)
                {
                    byte[] now = File.ReadAllBytes(path);
                    string[] was = System.Text.Encoding.UTF8.GetString(old).Split('\n', '\r');
                    string[] got = System.Text.Encoding.UTF8.GetString(now).Split('\n', '\r');
                    if (was.Length == got.Length)
                    {
                        foreach ((string a, string b) in was.Zip(got).Where(p => p.First != p.Second))
                        {
                            lines++;
                            Assert.Equal(Around(a), Around(b));
                        }
                    }
                    else
                    {
                        // a value that both robots have: the scenario sets it anew, and every other line stands
                        lines++;
                        Assert.True(got.Length > was.Length);
                        Assert.Empty(was.Except(got));
                    }
                }

                int most = Math.Max(1, row.Members.Count);
                Assert.True(lines <= most, $"{lines} lines changed, expected {most} at most: {row.Path} = {text} in {main}");

                // and it is read as it was meant
                ReadResult after = ScenarioReaderOf(main);
                EditRow? changed = EditRows.Of(after).FirstOrDefault(r => r.Owner == row.Owner && r.Path == row.Path);
                Assert.NotNull(changed);
                Assert.Equal(text, changed.Text);
                Interlocked.Increment(ref done);
            },
            iter: Edits, seed: "0N0XIzNsQ0O2", threads: 1);
        Assert.Equal(Edits, done);
    }

    [Theory]
    [InlineData("x = 1.5 # note\r\n", "x = 2.5 # note\r\n", 5)]
    [InlineData("x = 'a b'\n", "x = 'c'\n", 5)]
    [InlineData("t = { x = \"1 mm\", y = 2 }\n", "t = { x = \"2.5 mm\", y = 2 }\n", 11)]
    [InlineData("x = \"1 ± 0.1\"\r", "x = \"2\"\r", 5)]
    [InlineData("\"a.x\" = 1\n", "\"a.x\" = 2\n", 9)]
    public void One_value_is_changed_in_its_own_way_of_writing(string text, string expected, int column)
    {
        string value = expected.Contains("2.5 mm", StringComparison.Ordinal) ? "2.5 mm" : expected.Contains("2.5", StringComparison.Ordinal) ? "2.5" : expected.Contains('c', StringComparison.Ordinal) ? "c" : "2";
        var key = new Scenarios.Keys.KeyDefinition("s", "x", expected.Contains('c', StringComparison.Ordinal) ? Scenarios.Keys.KeyKind.Text : Scenarios.Keys.KeyKind.Quantity, "m");
        Assert.Equal(expected, EditText.Replace(text, 1, column, key, value));
    }

    // the place of a value of the shelf is that of the part's name, which must stay
    [Fact]
    public void A_value_of_the_shelf_is_put_beside_its_part()
    {
        Design design = DesignFiles.Open(Path.Combine(Repository.Root, "scenarios", "robots", "vole.toml"), out ReadResult read)!;
        EditRow row = EditRows.Of(read).First(r => r.Path.StartsWith("tyre.", StringComparison.Ordinal) && r.Definition.Name == "static_friction");
        Design next = design.With(row, "0.7", read)!;
        string text = next.Texts[next.Main].Text;
        Assert.Contains("shelf = \"sheet foamed TPU 0.12\"", text);
        Assert.Contains("static_friction = 0.7", text);
        Assert.Equal("0.7", EditRows.Of(next.Read()).First(r => r.Path == row.Path).Text);
    }

    // a disk that is full: the file is as it was
    [Fact]
    public void A_full_disk_loses_nothing()
    {
        using var folder = new ScratchFolder();
        string main = Copy(folder, Path.Combine(Repository.Root, "scenarios", "shove-heavy-grippy.toml"), 0, false);
        byte[] before = File.ReadAllBytes(main);
        Design design = DesignFiles.Open(main, out ReadResult read)!;
        Design next = design.With(EditRows.Of(read).First(r => r.Path == "chassis.mass" && r.Owner == "robot"), "1300 g", read)!;
        Files.Disk.Watch(new Full());
        try
        {
            Assert.ThrowsAny<IOException>(() => Keeper.Save(next, out IReadOnlyList<string> _));
        }
        finally
        {
            Files.Disk.Watch(null);
        }

        Assert.Equal(before, File.ReadAllBytes(main));
        Assert.Single(Directory.GetFiles(folder.Path));
        Keeper.Save(next, out IReadOnlyList<string> saved);
        Assert.Single(saved);
    }

    // a builder changes all motors, and never one of four
    [Theory]
    [InlineData("shove-heavy-grippy.toml", 4)]
    [InlineData("shove-equals.toml", 0)]
    public void One_row_changes_what_is_the_same_of_every_part(string file, int lines)
    {
        Design design = DesignFiles.Open(Path.Combine(Repository.Root, "scenarios", file), out ReadResult read)!;
        EditRow row = EditRows.Of(read).Single(r => r.Owner == "robot" && r.Path == "drive.*.gear_ratio");
        Assert.Equal(4, row.Members.Count);
        Design next = design.With(row, "30", read)!;
        EditRow[] now = [.. EditRows.Of(next.Read()).Where(r => r.Definition.Name == "gear_ratio" && r.Members.Count == 0)];
        Assert.Equal(4, now.Count(r => r.Owner == "robot" && r.Text == "30"));
        Assert.DoesNotContain(now, r => r.Owner == "opponent" && r.Text == "30");
        Assert.Equal(lines, next.Texts.Values.Sum(t => t.Text.Split("gear_ratio = 30").Length - 1));
    }

    // ends of a slider are values that can be read
    [Fact]
    public void Sliding_grip_ends_where_breakaway_grip_is()
    {
        Design design = DesignFiles.Open(Path.Combine(Repository.Root, "scenarios", "shove-heavy-grippy.toml"), out ReadResult read)!;
        EditRow row = EditRows.Of(read).First(r => r.Path == "tyre.soft.kinetic_friction" && r.Owner == "robot");
        Assert.Equal(1.0, row.High);
        Assert.False(design.With(row, "1.0", read)!.Read().HasErrors);
        Assert.True(design.With(row, "1.01", read)!.Read().HasErrors);
    }

    // the track leads over all usual values, without gap or step back, and gives the most room to what lies near the value
    [Fact]
    public void A_slider_reaches_all_usual_values()
    {
        int wide = 0;
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml"))
        {
            DesignFiles.Open(file, out ReadResult read);
            foreach (EditRow row in EditRows.Of(read).Where(r => r.Value is not null && r.Track.Count > 0))
            {
                string where = $"{row.Path} in {Path.GetFileName(file)}";
                Assert.True(row.Track[0].From == 0.0 && row.Track[^1].To == 1.0 && row.Track[0].Low == row.Low && row.Track[^1].High == row.High, where);
                Assert.True(row.Track.Zip(row.Track.Skip(1)).All(p => p.First.To == p.Second.From && p.First.High == p.Second.Low), where);
                double[] places = [.. row.Places(24)];
                Assert.True(places.Zip(places.Skip(1)).All(p => p.First < p.Second), where);
                Assert.InRange(row.Value!.Value, row.Low!.Value * (1.0 - Math.Sign(row.Low.Value) * 1e-5), row.High!.Value * (1.0 + Math.Sign(row.High.Value) * 1e-5));
                KeyDefinition key = row.Definition;
                if (key.Kind != KeyKind.Quantity || key.NotAbove.Length > 0 || key.NotBelow.Length > 0 || !double.IsFinite(key.UsualMin) || !double.IsFinite(key.UsualMax))
                {
                    continue;
                }

                (double low, double high) = (row.Si(row.Low.Value), row.Si(row.High.Value));
                Assert.True(Math.Min(low, high) <= Math.Max(key.Min, key.UsualMin) + (1e-5 * Math.Abs(key.UsualMin)), $"{where}: {low} to {high}");
                Assert.True(Math.Max(low, high) >= Math.Min(key.Max, key.UsualMax) - (1e-5 * Math.Abs(key.UsualMax)), $"{where}: {low} to {high}");
                wide += row.Track.Count > 1 ? 1 : 0;
            }
        }

        Assert.True(wide > 100, $"{wide} tracks with an outer part");
    }

    // what reading works out from other values has a row, too: put into the file as it stands there it is no mistake, and changes the value by its rounding at most
    [Fact]
    public void Estimated_values_have_a_row_that_may_be_written()
    {
        int written = 0;
        foreach (string file in s_files.Where(f => Path.GetFileName(Path.GetDirectoryName(f)) == "robots"))
        {
            Design design = DesignFiles.Open(file, out ReadResult read)!;
            EditRow[] rows = [.. EditRows.Of(read).Where(r => r.Source == EditSource.Estimate)];
            Assert.All(rows, r => Assert.Equal(0, r.Line));
            foreach (EditRow row in rows)
            {
                Design? next = design.With(row, row.Text, read);
                Assert.True(next is not null, $"{row.Path} has no place in {file}");
                ReadResult after = next.Read();
                Assert.True(!after.HasErrors, $"{row.Path} = {row.Text} in {file}: {string.Join("; ", after.Problems.Select(p => p.Message))}");
                EditRow given = EditRows.Of(after).First(r => r.Path == row.Path);
                Assert.Equal((row.Text, EditSource.File), (given.Text, given.Source));
                written++;
            }
        }

        // inertias of bodies and wheels, covers, packs: several of each robot
        Assert.True(written > 40, $"{written} rows");
    }

    private static ReadResult ScenarioReaderOf(string path) => Scenarios.ScenarioReader.Check(path);

    // the line without the value behind its first equals sign: key, blanks, comment
    private static string Around(string line)
    {
        int equals = line.IndexOf('=', StringComparison.Ordinal);
        int comment = line.IndexOf('#', StringComparison.Ordinal);
        return line[..(equals + 1)] + (comment >= 0 ? line[comment..] : "");
    }

    // the file and what it names
    private static string Copy(ScratchFolder folder, string file, int ends, bool mark)
    {
        string root = Path.Combine(Repository.Root, "scenarios");
        string[] with = Path.GetDirectoryName(file) == root ? [file, .. Directory.GetFiles(Path.Combine(root, "robots")), .. Directory.GetFiles(Path.Combine(root, "logs"))] : Directory.GetFiles(Path.GetDirectoryName(file)!);
        foreach (string from in with)
        {
            string to = folder[Path.GetRelativePath(Path.GetDirectoryName(file)!, from)];
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            string text = File.ReadAllText(from).ReplaceLineEndings(ends switch { 0 => "\n", 1 => "\r\n", _ => "\r" });
            File.WriteAllText(to, from.EndsWith(".toml", StringComparison.Ordinal) ? text : File.ReadAllText(from), new System.Text.UTF8Encoding(mark));
        }

        return folder[Path.GetFileName(file)];
    }

    private sealed class Full : Files.DiskWatch
    {
        public override void Before(Files.DiskAct act, string path)
        {
        }

        public override int Bytes(Files.DiskAct act, string path, int count) => act == Files.DiskAct.Write ? 0 : count;
    }
}
