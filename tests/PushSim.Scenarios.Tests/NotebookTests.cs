using System.Globalization;
using System.Text;
using PushSim.Files;
using PushSim.Scenarios.Notebook;
using PushSim.Scenarios.Sources;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>The notebook of a garage: what a spreadsheet may do to it, what stands against it, and that adding to it loses nothing.</summary>
public sealed class NotebookTests : IDisposable
{
    private static readonly LockAsk s_ask = new("the notebook", "test", _ => { }, CancellationToken.None);

    private static readonly PullRow s_row = new()
    {
        When = new DateTime(2026, 3, 1, 18, 30, 15), Tyre = "silicone, soft", Robot = "mole", Mass = 1.36, Motors = "25 mm, 20:1", Floor = "painted", State = FloorState.Of("wiped after 3 pulls"),
        Load = 13.3, Peak = 12.25, Sliding = 10.5, Source = "logs/a.csv", Note = "=hot \"day\"",
    };

    private readonly string _folder = Directory.CreateTempSubdirectory("notebook").FullName;

    public void Dispose()
    {
        Disk.Watch(null);
        Directory.Delete(_folder, recursive: true);
    }

    // Computed here: the same three pulls in every layout (a pound-force is 4.4482216 N by the yard and pound agreement).
    [Theory]
    [InlineData("when,tyre,state,load_n,peak_n,left_out\n2026-03-01 18:30,soft,wiped,13.3,12.25,\n2026-03-02 18:30,soft,dusty,13.3,8,\n,soft,,1,2,slack tether\n")]
    [InlineData("\uFEFFwhen;tyre;state;load_n;peak_n;left_out\r\n01.03.2026 18:30;soft;wiped;13,3;12,25;\r\n02.03.2026 18:30;soft;dusty;13,3;8;\r\n;soft;;1;2;slack tether\r\n")]
    [InlineData("left out;peak (N);my own;load [N];state;tyre;when\n;12.25;x;13.3;wiped;soft;2026-03-01T18:30\n;8;;13.3;dusty;soft;2026-03-02T18:30\nslack tether;2;;1;;soft;\n")]
    [InlineData("# a remark, with a comma\nwhen\ttyre\tstate\tload [kN]\tpeak_mN\tleft_out\n3/1/2026 6:30 PM\tsoft\twiped\t0.0133\t12250\t\n3/2/26 18:30\tsoft\tdusty\t0.0133\t8000\t\n\n3/13/2026\tsoft\t\t0.001\t2000\tslack tether\n")]
    public void Spreadsheets_layouts_read_alike(string text)
    {
        NotebookResult read = NotebookReader.Parse("readings.csv", text);
        Assert.Empty(read.Problems);
        Assert.Equal([new DateTime(2026, 3, 1, 18, 30, 0), new DateTime(2026, 3, 2, 18, 30, 0)], read.Rows.Take(2).Select(r => r.When!.Value));
        Assert.Equal(["wiped", "dusty"], read.Rows.Take(2).Select(r => r.State.Word));
        Assert.Equal([13.3, 13.3, 1.0], read.Rows.Select(r => Math.Round(r.Load!.Value, 9)));
        Assert.Equal([12.25, 8.0, 2.0], read.Rows.Select(r => Math.Round(r.Peak!.Value, 9)));
        Assert.Equal([true, true, false], read.Rows.Select(r => r.IsCounted));
    }

    [Theory]
    [InlineData("tyre,state,load_n,peak_n\nsoft,wiped,13.3,much\n", 2, 17, "\"much\" is no number")]
    [InlineData("tyre,state,load_n,peak_n\nsoft,wiped,-13.3,2\n", 2, 12, "must be above zero")]
    [InlineData("tyre,state,load_n,peak_n\n,wiped,13.3,2\n", 2, 1, "names no tyre")]
    [InlineData("tyre,state,load_n,peak_n\nsoft,wiped,13.3,\n", 2, 17, "neither a peak nor")]
    [InlineData("tyre,state,load,peak_n\nsoft,wiped,13.3,2\n", 1, 1, "names no unit")]
    [InlineData("tyre,state,load_furlong,peak_n\nsoft,wiped,13.3,2\n", 1, 1, "no unit of force")]
    [InlineData("tyre,state,load [furlong],peak_n\nsoft,wiped,13.3,2\n", 1, 1, "no unit of force")]
    [InlineData("tyre,state,when,peak_n\nsoft,wiped,3/4/2026,2\n", 2, 12, "is the day or the month first")]
    [InlineData("tyre,state,when,peak_n\nsoft,wiped,yesterday,2\n", 2, 12, "is no date")]
    [InlineData("tyre,state,load_n\nsoft,wiped,2\n", 1, 1, "no column for the force")]
    [InlineData("a,b\n1,2\n", 0, 0, "has no head")]
    public void What_is_wrong_is_told_with_its_place(string text, int line, int column, string words)
    {
        Problem wrong = Assert.Single(NotebookReader.Parse("readings.csv", text).Problems);
        Assert.Equal((line, line == 0 ? 0 : column), (wrong.Line, wrong.Column));
        Assert.Contains(words, wrong.Message, StringComparison.Ordinal);
        Assert.NotEmpty(wrong.Help);
    }

    [Fact]
    public void A_row_that_is_left_out_may_be_wrong()
    {
        NotebookResult read = NotebookReader.Parse("readings.csv", "tyre,state,peak_n,left_out\n,wiped,much,clipped\n");
        Assert.Empty(read.Problems);
        Assert.Equal("clipped", Assert.Single(read.Rows).LeftOut);
    }

    [Theory]
    [InlineData("wiped", "wiped", null, null)]
    [InlineData("Dusty after 3,5 m", "dusty", null, 3.5)]
    [InlineData("after 12 pulls", "wiped", 12.0, null)]
    [InlineData("wiped, 1 pull", "wiped", 1.0, null)]
    [InlineData("wiped, 4 pulls and 250 mm", "wiped", 4.0, 0.25)]
    [InlineData("oak 12 mm thick board", "oak thick board", null, 0.012)]
    [InlineData("", "", null, null)]
    public void A_state_is_a_word_and_a_count(string text, string word, double? pulls, double? metres)
    {
        var state = FloorState.Of(text);
        Assert.Equal((word, pulls, metres), (state.Word, state.Pulls, state.Metres));
        Assert.Equal(state, FloorState.Of(state.ToString()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("tyre,load [gf],state,my own,sliding_n,peak_n,when,robot,mass [g],motors,floor,source,note,left_out\r\n")]
    [InlineData("\uFEFFnote;left_out;tyre;load_n;peak_n;sliding_n;state;when;robot;mass_kg;motors;floor;source\r\nx;;a;13,3;1,5;1,2;;;;;;;")]
    [InlineData("note;left_out;tyre;load_n;peak_n;sliding_n;state;when;robot;mass_kg;motors;floor;source\nx;;a;13.3;1.5;1.2;;;;;;;\n")]
    public void What_is_added_reads_back_in_every_layout(string before)
    {
        string path = Path.Combine(_folder, "readings.csv");
        if (before.Length > 0)
        {
            File.WriteAllText(path, before);
        }

        Assert.Empty(NotebookWriter.Append(path, s_row, s_ask));
        Assert.Empty(NotebookWriter.Append(path, s_row with { State = FloorState.Unknown, LeftOut = "clipped" }, s_ask));
        Assert.StartsWith(before.TrimStart('\uFEFF'), File.ReadAllText(path), StringComparison.Ordinal);
        NotebookResult read = NotebookReader.Read(path);
        Assert.Empty(read.Problems);
        Assert.Equal(s_row, read.Rows[^2] with { Line = 0, Load = Math.Round(read.Rows[^2].Load!.Value, 4), Mass = Math.Round(read.Rows[^2].Mass!.Value, 6) });
        Assert.Equal("clipped", read.Rows[^1].LeftOut);
        Assert.Equal([Path.GetFileName(path)], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_missing_column_is_told_and_nothing_is_written()
    {
        string path = Path.Combine(_folder, "readings.csv");
        File.WriteAllText(path, "tyre,state,peak_n\n");
        Problem wrong = Assert.Single(NotebookWriter.Append(path, s_row, s_ask));
        Assert.Contains("\"when\"", wrong.Message, StringComparison.Ordinal);
        Assert.Equal("tyre,state,peak_n\n", File.ReadAllText(path));
    }

    // A full disk or a fall after each byte of a row: what stood before stays, the rest is marked, and the next row is whole.
    [Fact]
    public void A_row_that_is_cut_off_anywhere_harms_no_other()
    {
        string path = Path.Combine(_folder, "readings.csv");
        Assert.Empty(NotebookWriter.Append(path, s_row, s_ask));
        byte[] first = File.ReadAllBytes(path);
        Assert.Empty(NotebookWriter.Append(path, s_row, s_ask));
        int length = File.ReadAllBytes(path).Length - first.Length;
        for (int cut = 0; cut < length; cut++)
        {
            File.WriteAllBytes(path, first);
            Disk.Watch(new Full(cut));
            Assert.Throws<IOException>(() => NotebookWriter.Append(path, s_row, s_ask));
            Disk.Watch(null);
            Assert.Empty(NotebookWriter.Append(path, s_row with { Tyre = "next" }, s_ask));
            NotebookResult read = NotebookReader.Read(path);
            Assert.Empty(read.Problems);
            Assert.Equal(s_row, read.Rows[0] with { Line = 0 });
            Assert.Equal("next", read.Rows[^1].Tyre);
            Assert.Equal(cut == 0 ? 2 : 3, read.Rows.Count);

            // only its line end was missing: the row itself is whole
            Assert.Equal(cut == 0 || cut == length - 1, read.Rows[^2].IsCounted);
        }
    }

    [Fact]
    public async Task Many_may_add_at_once()
    {
        string path = Path.Combine(_folder, "readings.csv");
        await Task.WhenAll(Enumerable.Range(0, 4).Select(w => Task.Run(() =>
        {
            for (int i = 0; i < 6; i++)
            {
                NotebookWriter.Append(path, s_row with { Tyre = string.Create(CultureInfo.InvariantCulture, $"{w}-{i}") }, s_ask);
            }
        })));
        Assert.Equal(24, NotebookReader.Read(path).Rows.Select(r => r.Tyre).Distinct().Count());
        Assert.Equal(25, Encoding.UTF8.GetString(File.ReadAllBytes(path)).Count(c => c == '\n'));
    }

    // Lets some bytes of a row pass, as a disk that is full.
    private sealed class Full(int bytes) : DiskWatch
    {
        public override void Before(DiskAct act, string path)
        {
        }

        public override int Bytes(DiskAct act, string path, int count) => act == DiskAct.Write ? bytes : count;
    }
}
