using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using PushSim.Scenarios.Keys;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>What the key reference says holds when a key is left out is what the reader takes: the default written out changes nothing.</summary>
public class DefaultsTests
{
    private static readonly JsonSerializerOptions s_options = new() { IncludeFields = true, NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    // the small robot has these, or its no-load current tells the friction already
    private static readonly HashSet<string> s_others = ["robot.motor.gear_ratio", "robot.motor.no_load_current", "robot.motor.viscous_friction"];

    private static readonly string s_robot = SmallFiles.Robot + "[chassis.downforce]\nforce = \"1 N\"\n";

    // a scenario without the key is the same for all keys of its section: it is read once
    private static readonly ConcurrentDictionary<(string Robot, string Scenario), Lazy<ScenarioSettings?>> s_without = new();

    public static TheoryData<string> Keys => [.. KeySearch.All.Where(m => Literal(m.Key) is not null && !m.Path.StartsWith("garage.", StringComparison.Ordinal)).Select(m => m.Path)];

    [Theory]
    [MemberData(nameof(Keys))]
    public void A_default_written_out_changes_nothing(string path)
    {
        bool isRobot = path.StartsWith("robot.", StringComparison.Ordinal);
        KeyDefinition key = KeySearch.Find(path).Single().Key;
        string line = $"{key.Name} = {Literal(key)}";
        string section = key.Section is "robot" or "scenario" ? "" : key.Section;
        bool isCompared = false;
        foreach (string kind in KeyTable.In("manoeuvre").Single(k => k.Name == "kind").Choices)
        {
            string scenario = Scenario(kind);
            string? text = Put(isRobot ? s_robot : scenario, section, key.Name, line);
            if (text is null)
            {
                continue;
            }

            ScenarioSettings? without = isRobot ? Without(Put(s_robot, section)!, scenario) : Without(s_robot, Put(scenario, section)!);
            if (without is null)
            {
                continue;
            }

            ScenarioSettings? with = isRobot ? Read(text, scenario) : Read(s_robot, text);
            if (with is null)
            {
                continue;
            }

            isCompared = true;

            // that an accuracy is asked for is told apart from what it is
            with = with with { Numerics = with.Numerics with { IsAskedFor = without.Numerics.IsAskedFor } };
            Assert.Equal(JsonSerializer.Serialize(without, s_options), JsonSerializer.Serialize(with, s_options));
        }

        Assert.Equal(!s_others.Contains(path), isCompared);
    }

    private static string Scenario(string kind) => $"question = \"?\"\nrobot = \"shrew.toml\"\n[manoeuvre]\nkind = \"{kind}\"\nend = \"2 s\"\n" + kind switch
    {
        "pull" or "drag" => "[tether]\nstiffness = \"5 N/mm\"\n[tether.hook]\nx = \"-60 mm\"\nheight = \"20 mm\"\n[tether.anchor]\nx = \"-300 mm\"\nheight = \"20 mm\"\n[tether.cell]\nfilter_time = \"10 ms\"\n",
        "wall" => "[[wall]]\nx1 = \"0.3 m\"\ny1 = \"-0.5 m\"\nx2 = \"0.3 m\"\ny2 = \"0.5 m\"\n",
        "timeline" => "[[manoeuvre.points]]\ntime = \"0.5 s\"\n",
        "shove" => "[opponent]\nrobot = \"shrew.toml\"\n[[opponent.points]]\ntime = \"0.5 s\"\n",
        _ => "",
    };

    // null if the key is there already
    private static string? Put(string text, string section, string name = "", string line = "")
    {
        if (section.Length == 0)
        {
            return name.Length > 0 && Regex.IsMatch(text.Split("\n[")[0], $@"(?m)^{name} =") ? null : line + "\n" + text;
        }

        Match header = Regex.Match(text, $@"(?m)^\[\[?{Regex.Escape(section)}\]\]?\n(?<body>(?:[^\[].*\n)*)");
        return !header.Success ? text + $"[{section}]\n{line}\n"
            : name.Length > 0 && Regex.IsMatch(header.Groups["body"].Value, $@"(?m)^{name} =") ? null
            : text.Insert(header.Groups["body"].Index, line + "\n");
    }

    // the default as a file writes it; null if it is told in words
    private static string? Literal(KeyDefinition key) => key.Kind switch
    {
        _ when key.Default.Length == 0 => null,
        KeyKind.Flag => key.Default is "true" or "false" ? key.Default : null,
        KeyKind.Choice => key.Choices.Contains(key.Default) ? $"\"{key.Default}\"" : null,
        KeyKind.Text => key.Default.Contains(' ') || key.Name == "shelf" ? null : $"\"{key.Default}\"",
        KeyKind.Quantity or KeyKind.Whole => Regex.IsMatch(key.Default, @"^[-+0-9.e]+$") ? key.Default : Regex.IsMatch(key.Default, @"^[-+0-9.e]+ ?[^ ]+( [^ ]{1,3})?$") ? $"\"{key.Default}\"" : null,
        _ => null,
    };

    private static ScenarioSettings? Without(string robot, string scenario) =>
        s_without.GetOrAdd((robot, scenario), t => new Lazy<ScenarioSettings?>(() => Read(t.Robot, t.Scenario))).Value;

    private static ScenarioSettings? Read(string robot, string scenario)
    {
        using var files = new SmallFiles(robot, scenario);
        ScenarioSettings? read = ScenarioReader.Read(files.ScenarioPath).Scenario;
        return read is null ? null : read with { Name = "" };
    }
}
