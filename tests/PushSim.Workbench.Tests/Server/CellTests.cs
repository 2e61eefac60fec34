using System.Net;
using System.Text.Json;
using PushSim.Cli.Tests.Bench;
using Xunit;

namespace PushSim.Workbench.Tests.Server;

/// <summary>The load cell over pseudo-terminal pairs, and the notebook of the garage. Forces are invented; what comes back is compared with what was sent.</summary>
public sealed class CellTests
{
    // Standard gravity, CGPM 1901 [N/g]
    private const double Gram = 9.80665e-3;

    [Fact]
    public async Task A_pull_is_traced_marked_and_noted_and_a_pulled_cable_is_a_gap()
    {
        using Pty? first = Pty.Open();
        Assert.SkipWhen(first is null, "no pseudo-terminals here");
        await using OpenServer open = await OpenServer.StartAsync("pull-test.toml");
        await File.WriteAllTextAsync(open["garage.toml"], "name = \"test\"\n");
        string port = open["port"];
        File.CreateSymbolicLink(port, first.Port);
        await open.PostAsync("/api/port", JsonSerializer.Serialize(new { name = port, baud = 115200, unit = "gf", tyre = "soft" }));
        double time = await HearAsync(open, first, 0.0, t => Words(t).StartsWith("Ready: pull.", StringComparison.Ordinal));
        time = CellLines.Play(first, time);
        await HearAsync(open, first, time, t => t.GetProperty("pulls").GetArrayLength() == 1);
        JsonElement trace = await open.EventAsync("trace", t => t.GetProperty("noted").GetInt32() == 1);
        JsonElement pull = trace.GetProperty("pulls")[0];
        Assert.True(pull.GetProperty("good").GetBoolean());

        // The pull of three seconds: 620 gf at most, 520 gf while it slides, noise of 8 gf at most. Thinned, the greatest is still there.
        Assert.InRange(pull.GetProperty("to").GetDouble() - pull.GetProperty("from").GetDouble(), 2.8, 3.2);
        double[] force = [.. trace.GetProperty("f").EnumerateArray().Where(f => f.ValueKind == JsonValueKind.Number).Select(f => f.GetDouble() / Gram)];
        double sent = CellLines.Pull(CellLines.Rate).Max();
        Assert.InRange(force.Max(), sent - 4.0, sent + 4.0);
        double[] times = [.. trace.GetProperty("t").EnumerateArray().Select(t => t.GetDouble())];
        Assert.Equal(times.Order(), times);
        Assert.InRange(times.Length, 20, 20 * 31);
        Assert.InRange(times[^1], 7.0, 30.0);

        // once more, behind a gap
        File.Delete(port);
        first.Dispose();
        await open.EventAsync("trace", t => Words(t).Contains("is gone", StringComparison.Ordinal));
        using Pty second = Pty.Open()!;
        File.CreateSymbolicLink(port, second.Port);
        time = await HearAsync(open, second, time + 3.0, t => t.GetProperty("gaps").GetArrayLength() > 0);
        time = CellLines.Play(second, time);
        await HearAsync(open, second, time, t => t.GetProperty("noted").GetInt32() == 2);
        await open.PostAsync("/api/port", "{\"name\":null}");
        trace = await open.EventAsync("trace", t => !t.GetProperty("listening").GetBoolean());
        Assert.Contains("2 pulls, all good: sliding at 5.10 N (520 gf).", Words(trace), StringComparison.Ordinal);
        Assert.Contains(trace.GetProperty("f").EnumerateArray(), f => f.ValueKind == JsonValueKind.Null);

        JsonElement rows = JsonDocument.Parse(await open.Client.GetStringAsync("/api/readings")).RootElement.GetProperty("rows");
        Assert.Equal(2, rows.GetArrayLength());
        Assert.All(rows.EnumerateArray(), r => Assert.Equal(("soft", "mole.toml", "5.10 N (520 gf)", false), (r.GetProperty("tyre").GetString(), r.GetProperty("robot").GetString(), r.GetProperty("sliding").GetString(), r.GetProperty("left_out").GetBoolean())));
        Assert.All(rows.EnumerateArray(), r => Assert.NotEqual("", r.GetProperty("load").GetString()));
    }

    // a cell that reads twice too much: 200 g put on, taken off, then the pull of the invented lines; floor and its state are noted, every line is in the raw log
    [Fact]
    public async Task A_known_mass_scales_the_cell_and_tare_anew_waits_for_a_quiet_second()
    {
        using Pty? pty = Pty.Open();
        Assert.SkipWhen(pty is null, "no pseudo-terminals here");
        await using OpenServer open = await OpenServer.StartAsync("pull-test.toml");
        await File.WriteAllTextAsync(open["garage.toml"], "name = \"test\"\n");
        await open.PostAsync("/api/tare", "{}", HttpStatusCode.BadRequest);
        await open.PostAsync("/api/port", JsonSerializer.Serialize(new { name = pty.Port, unit = "gf", known = "200 mm" }), HttpStatusCode.BadRequest);
        await open.PostAsync("/api/port", JsonSerializer.Serialize(new { name = pty.Port, unit = "gf", known = "200 g", tyre = "soft", floor = "board", state = "wiped" }));
        double time = await HearAsync(open, pty, 0.0, t => Words(t).Contains("known mass", StringComparison.Ordinal));
        time = await HearAsync(open, pty, time, t => Words(t).StartsWith("Take it off", StringComparison.Ordinal), 400.0);
        time = await HearAsync(open, pty, time, t => t.GetProperty("tared").GetBoolean());
        foreach (double f in CellLines.Pull(CellLines.Rate))
        {
            pty.Line(CellLines.Stamp(time, 2.0 * f));
            time += 1.0 / CellLines.Rate;
        }

        time = await HearAsync(open, pty, time, t => t.GetProperty("noted").GetInt32() == 1);
        await open.PostAsync("/api/tare");
        await HearAsync(open, pty, time, t => t.GetProperty("noted").GetInt32() == 1 && !t.GetProperty("tared").GetBoolean());
        JsonElement row = JsonDocument.Parse(await open.Client.GetStringAsync("/api/readings")).RootElement.GetProperty("rows")[0];
        Assert.Equal("board", row.GetProperty("floor").GetString()!.Split(',')[0]);

        // sliding at 520 gf by the scale of the known mass; the noise of a second at rest is a hundredth of it
        string sliding = row.GetProperty("sliding").GetString()!;
        Assert.InRange(double.Parse(sliding.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture) / Gram, 510.0, 530.0);
        string log = Directory.GetFiles(open["pushsim-out/bench"], "bench-*.log").Single();
        Assert.Equal("pushsim-out/bench/" + Path.GetFileName(log), row.GetProperty("log").GetString());
        await open.PostAsync("/api/port", "{\"name\":null}");
        string[] lines = await File.ReadAllLinesAsync(log);
        Assert.True(lines.Length > (int)(7.0 * CellLines.Rate));
        Assert.All(lines, l => Assert.Contains("g: ", l, StringComparison.Ordinal));
        Assert.Contains("wiped", await File.ReadAllTextAsync(open["readings.csv"]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lines_without_a_unit_ask_for_one()
    {
        using Pty? pty = Pty.Open();
        Assert.SkipWhen(pty is null, "no pseudo-terminals here");
        await using OpenServer open = await OpenServer.StartAsync("pull-test.toml");
        await open.PostAsync("/api/port", JsonSerializer.Serialize(new { name = pty.Port }));
        for (int i = 0; i < 40; i++)
        {
            pty.Line(FormattableString.Invariant($"{0.0125 * i:0.0000},{i % 3}"));
        }

        JsonElement trace = await open.EventAsync("trace", t => Words(t).Contains("unit", StringComparison.Ordinal));
        Assert.Contains("choose the unit of the readings and listen again.", Words(trace), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Readings_by_hand_stand_in_the_notebook_all_or_none()
    {
        await using OpenServer open = await OpenServer.StartAsync("pull-test.toml");
        await File.WriteAllTextAsync(open["garage.toml"], "name = \"test\"\n");
        JsonElement done = await open.PostAsync("/api/reading", JsonSerializer.Serialize(new { text = "soft, 1360 g, 12.0 N, 11.1 N, clean, dry\n\nhard,,7 N,\n" }));
        Assert.Equal(2, done.GetProperty("added").GetInt32());
        string[] file = await File.ReadAllLinesAsync(open["readings.csv"]);
        Assert.Equal(3, file.Length);
        Assert.Contains(",13.337,12,11.1,,\"clean, dry\",", file[1], StringComparison.Ordinal);
        JsonElement fault = await open.PostAsync("/api/reading", JsonSerializer.Serialize(new { text = "soft, 1360 g, 12.0 N\nsoft, 1360 g, 12 apples" }), HttpStatusCode.BadRequest);
        Assert.Contains("line 2", fault.GetProperty("message").GetString(), StringComparison.Ordinal);
        await open.PostAsync("/api/reading", JsonSerializer.Serialize(new { tyre = "soft", load = "13.3 N", sliding = "1100 gf" }));
        JsonElement book = JsonDocument.Parse(await open.Client.GetStringAsync("/api/readings")).RootElement;
        Assert.Equal(["11.10 N (1132 gf)", "", "10.79 N (1100 gf)"], book.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("sliding").GetString()));
        Assert.Equal("1360 gf", book.GetProperty("rows")[0].GetProperty("load").GetString());
    }

    // the shipped garage's made-up season: the page tells what `fit` tells, tyres side by side
    [Fact]
    public async Task The_notebook_tells_the_season_as_fit_does()
    {
        await using OpenServer open = await OpenServer.StartAsync("garage/robots/mole.toml", "garage");
        JsonElement season = JsonDocument.Parse(await open.Client.GetStringAsync("/api/readings")).RootElement.GetProperty("season");
        using var told = new StringWriter();
        PushSim.Cli.CommandLineApp.Invoke(["fit", open["garage/readings.csv"], "--json"], told, TextWriter.Null);
        Assert.Contains(JsonDocument.Parse(told.ToString()).RootElement.GetProperty("verdict").GetString()!.Split(". ")[0], season.GetProperty("sentence").GetString(), StringComparison.Ordinal);
        Assert.Equal(6, season.GetProperty("tyres").GetArrayLength());
    }

    [Fact]
    public async Task Without_a_garage_nothing_is_noted()
    {
        await using OpenServer open = await OpenServer.StartAsync("pull-test.toml");
        Assert.Equal(JsonValueKind.Null, JsonDocument.Parse(await open.Client.GetStringAsync("/api/readings")).RootElement.GetProperty("file").ValueKind);
        JsonElement fault = await open.PostAsync("/api/reading", "{\"text\":\"soft, 1360 g, 12.0 N\"}", HttpStatusCode.BadRequest);
        Assert.Contains("no garage", fault.GetProperty("message").GetString(), StringComparison.Ordinal);
        await open.PostAsync("/api/port", "{\"name\":\"cell0\",\"tyre\":\"soft\"}", HttpStatusCode.BadRequest);
        Assert.Equal(JsonValueKind.Array, JsonDocument.Parse(await open.Client.GetStringAsync("/api/ports")).RootElement.GetProperty("ports").ValueKind);
    }

    private static string Words(JsonElement trace) => trace.GetProperty("words").GetString()!;

    // Readings at rest until a trace fits; the board's time behind them
    private static async Task<double> HearAsync(OpenServer open, Pty pty, double time, Func<JsonElement, bool> fits, double grams = 0.0)
    {
        Task<JsonElement> heard = open.EventAsync("trace", fits);
        for (; !heard.IsCompleted; time += 1.0 / CellLines.Rate)
        {
            pty.Line(CellLines.Stamp(time, grams));
            await Task.Delay(5);
        }

        await heard;
        return time;
    }
}
