using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace PushSim.Workbench.Tests.Server;

/// <summary>Steps, saves, files that others change, and that the last value wins.</summary>
public partial class StateTests
{
    private const string Mass = "a.chassis.mass";

    // a module that is found only in another one waits for it: the page names them all
    [Fact]
    public async Task The_page_names_every_module_that_its_scripts_take()
    {
        await using OpenServer open = await OpenServer.StartAsync(file: null);
        string page = await open.Client.GetStringAsync("/");
        SortedSet<string> found = [];
        Queue<string> next = new(["/static/app.js"]);
        while (next.TryDequeue(out string? path))
        {
            string text = await open.Client.GetStringAsync(path);
            foreach (Match taken in Module().Matches(text))
            {
                string other = new Uri(new Uri("http://page" + path), taken.Groups[1].Value).AbsolutePath;
                if (found.Add(other))
                {
                    next.Enqueue(other);
                }
            }
        }

        Assert.True(found.Count > 20);
        Assert.Equal(found, new SortedSet<string>(Preload().Matches(page).Select(m => m.Groups[1].Value)));
    }

    [Fact]
    public async Task Steps_go_back_and_forth_and_a_movement_is_one_step()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        foreach (string text in new[] { "1150 g", "1200 g", "1250 g" })
        {
            await open.ChangeAsync(Mass, text, drag: true);
        }

        JsonElement last = await open.ChangeAsync(Mass, "1300 g");
        JsonElement answer = await open.AnswerAsync(last);
        Assert.StartsWith("mole pushes badger back", answer.GetProperty("sentence").GetString());
        Assert.StartsWith("badger pushes mole back", answer.GetProperty("before_sentence").GetString());
        await open.AnswerAsync(await open.PostAsync("/api/undo"));
        await open.EventAsync("state", s => s.GetProperty("unsaved").GetInt32() == 0 && s.GetProperty("undo").ValueKind == JsonValueKind.Null && s.GetProperty("redo") is { ValueKind: JsonValueKind.Object } redo && redo.GetProperty("words").GetString() == "mass 1300 g");
        await open.AnswerAsync(await open.PostAsync("/api/redo"));
        Assert.Equal("1300 g", Row(await open.StateAsync(), Mass).GetProperty("text").GetString());
    }

    [Fact]
    public async Task A_wrong_value_has_the_words_of_check_and_the_last_answer_stays_marked_old()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        await open.AnswerAsync(await open.ChangeAsync(Mass, "1300 g"));
        JsonElement wrong = await open.ChangeAsync(Mass, "-5 g", drag: true);
        JsonElement problem = await open.EventAsync("problem", p => p.GetProperty("number").GetInt64() == wrong.GetProperty("number").GetInt64());
        Assert.Equal("\"mass\" is -5 g, outside the allowed range", problem.GetProperty("message").GetString());
        JsonElement old = await open.EventAsync("answer", a => a.GetProperty("old").GetBoolean());
        Assert.StartsWith("mole pushes badger back", old.GetProperty("sentence").GetString());
        JsonElement row = Row(await open.StateAsync(), Mass);
        Assert.Equal("1300 g", row.GetProperty("text").GetString());
        Assert.Equal("-5 g", row.GetProperty("error").GetProperty("text").GetString());
        JsonElement right = await open.AnswerAsync(await open.ChangeAsync(Mass, "1310 g"));
        Assert.False(right.GetProperty("old").GetBoolean());
        Assert.Equal(JsonValueKind.Null, Row(await open.StateAsync(), Mass).GetProperty("error").ValueKind);
    }

    [Fact]
    public async Task A_thousand_changes_pile_nothing_up_and_the_last_one_wins()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        long last = 0;
        for (int i = 0; i < 1000; i++)
        {
            last = open.Server.State.Change(Mass, $"{1000 + (i % 500)} g", isDrag: true);
        }

        JsonElement answer = await open.AnswerAsync(last);
        Assert.Equal(last, answer.GetProperty("number").GetInt64());
        Assert.Equal("1499 g", Row(await open.StateAsync(), Mass).GetProperty("text").GetString());
        Assert.InRange(open.Count("answer"), 1, 200);
    }

    [Fact]
    public async Task Numbers_of_answers_only_rise()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        var numbers = new System.Collections.Concurrent.ConcurrentQueue<long>();
        open.Server.Hub.Sent += (name, data) =>
        {
            if (name == "answer")
            {
                numbers.Enqueue(JsonDocument.Parse(data).RootElement.GetProperty("number").GetInt64());
            }
        };
        long last = 0;
        for (int i = 0; i < 60; i++)
        {
            last = open.Server.State.Change(i % 2 == 0 ? Mass : "b.chassis.mass", $"{1000 + (10 * i)} g", isDrag: true);
            await Task.Delay(5);
        }

        // the closer look may answer meanwhile
        await open.AnswerAsync(last);
        long[] sent = [.. numbers];
        Assert.Equal(sent.Order(), sent);
    }

    [Fact]
    public async Task Save_writes_only_the_files_that_were_changed()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        string robot = File.ReadAllText(open["robots/mole.toml"]);
        string scenario = File.ReadAllText(open["shove-heavy-grippy.toml"]);
        await open.AnswerAsync(await open.ChangeAsync(Mass, "1300 g"));
        Assert.Equal(scenario, File.ReadAllText(open["shove-heavy-grippy.toml"]));
        JsonElement saved = await open.PostAsync("/api/save");
        Assert.Single(saved.GetProperty("saved").EnumerateArray());
        Assert.Equal(scenario.Replace("1100 g", "1300 g", StringComparison.Ordinal), File.ReadAllText(open["shove-heavy-grippy.toml"]));
        Assert.Equal(robot, File.ReadAllText(open["robots/mole.toml"]));
        Assert.Equal(0, (await open.StateAsync()).GetProperty("unsaved").GetInt32());

        // a step back is a change again
        await open.PostAsync("/api/undo");
        await open.EventAsync("state", s => s.GetProperty("unsaved").GetInt32() == 1 && Row(s, Mass).GetProperty("text").GetString() == "1100 g");
    }

    [Fact]
    public async Task A_file_that_others_change_is_read_again()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        await open.AnswerAsync(1);
        string path = open["shove-heavy-grippy.toml"];
        File.WriteAllText(path, File.ReadAllText(path).Replace("1100 g", "1333 g", StringComparison.Ordinal));
        JsonElement told = await open.EventAsync("outside", _ => true);
        Assert.False(told.GetProperty("both").GetBoolean());
        await open.EventAsync("state", s => Row(s, Mass).GetProperty("text").GetString() == "1333 g");
    }

    [Fact]
    public async Task Both_versions_are_shown_where_both_changed()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        await open.AnswerAsync(await open.ChangeAsync(Mass, "1300 g"));
        string path = open["shove-heavy-grippy.toml"];
        string theirs = File.ReadAllText(path).Replace("1100 g", "1222 g", StringComparison.Ordinal);
        File.WriteAllText(path, theirs);
        JsonElement conflict = await open.PostAsync("/api/save", "{}", HttpStatusCode.Conflict);
        Assert.Equal(theirs, conflict.GetProperty("theirs").GetString());
        Assert.Contains("1300 g", conflict.GetProperty("mine").GetString());
        Assert.True((await open.EventAsync("outside", _ => true)).GetProperty("both").GetBoolean());
        Assert.Equal(theirs, File.ReadAllText(path));
        await open.PostAsync("/api/save", "{\"over\":true}");
        Assert.Contains("1300 g", File.ReadAllText(path));
    }

    [Fact]
    public async Task Theirs_can_be_taken()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        await open.AnswerAsync(await open.ChangeAsync(Mass, "1300 g"));
        string path = open["shove-heavy-grippy.toml"];
        File.WriteAllText(path, File.ReadAllText(path).Replace("1100 g", "1222 g", StringComparison.Ordinal));
        await open.PostAsync("/api/reload");
        await open.EventAsync("state", s => Row(s, Mass).GetProperty("text").GetString() == "1222 g" && s.GetProperty("unsaved").GetInt32() == 0);
    }

    // in both robots' file it would change both
    [Fact]
    public async Task A_value_of_one_of_two_equal_robots_is_set_by_the_scenario()
    {
        await using OpenServer open = await OpenServer.StartAsync("shove-equals.toml");
        await open.AnswerAsync(await open.ChangeAsync("b.chassis.mass", "1500 g"));
        JsonElement state = await open.StateAsync();
        Assert.Equal("1360 g", Row(state, Mass).GetProperty("text").GetString());
        Assert.Equal("1500 g", Row(state, "b.chassis.mass").GetProperty("text").GetString());
        await open.PostAsync("/api/save");
        Assert.Contains("[opponent.override]", File.ReadAllText(open["shove-equals.toml"]));
    }

    // the same words as the command: its sentence at whole accuracy
    [Fact]
    public async Task The_closer_answer_is_that_of_the_command()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        JsonElement whole = await open.EventAsync("answer", a => a.GetProperty("whole").GetBoolean());
        var run = Runs.Simulator.Run(Scenarios.ScenarioReader.Read(open["shove-heavy-grippy.toml"]).Scenario!);
        Assert.Equal(Words.Runs.RunCard.Answer(run), whole.GetProperty("sentence").GetString());
    }

    internal static JsonElement Row(JsonElement state, string key) => state.GetProperty("robots").EnumerateArray().SelectMany(r => r.GetProperty("parts").EnumerateArray())
        .Concat(state.GetProperty("scene_parts").EnumerateArray()).SelectMany(p => p.GetProperty("rows").EnumerateArray()).First(r => r.GetProperty("key").GetString() == key);

    [GeneratedRegex("""(?:from|import)\s*"(\.[^"]+)""")]
    private static partial Regex Module();

    [GeneratedRegex("""rel="modulepreload" href="([^"]+)""")]
    private static partial Regex Preload();
}
