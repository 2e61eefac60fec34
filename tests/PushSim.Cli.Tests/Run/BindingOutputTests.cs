using System.Text.Json;
using PushSim.Analysis.Limits;
using PushSim.Binding;
using PushSim.Runs;
using PushSim.Scenarios;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Cli.Tests.Run;

/// <summary>What binds, as run and limits print it of the shipped files.</summary>
public class BindingOutputTests
{
    // Shorter stretches count with their neighbours [s].
    private const double ShortestSpan = 0.02;

    private static ScenarioSettings Shipped(string name) => ScenarioReader.Check(Repository.Scenario(name)).Scenario!;

    private static IEnumerable<string> Names => Directory.EnumerateFiles(Path.GetDirectoryName(Repository.Scenario("arc"))!, "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order();

    public static TheoryData<string> Pushes => [.. Names.Where(n => Shipped(n).Manoeuvre.Traits.Family == ManoeuvreFamily.Push)];

    public static TheoryData<string> Scenarios => [.. Names];

    // at each sample outside of stretches that are too short, what the wheels say is what the span says
    [Theory]
    [MemberData(nameof(Pushes))]
    public void The_spans_of_a_push_are_the_moments_of_its_wheels(string name)
    {
        RunResult run = Simulator.Run(Shipped(name));
        BindingMoments[] driven = [.. run.Bindings.Where(b => b.IsDriven)];
        int[] sets = [.. Enumerable.Range(0, run.Time.Length).Select(i => Set(driven.Select(d => d.Kinds[i])))];
        int checkedSamples = 0;
        for (int i = 0; i < sets.Length; i++)
        {
            // steady for long enough to either side, so that no neighbour outweighs it
            bool isSteady = Enumerable.Range(0, sets.Length).Where(k => Math.Abs(run.Time[k] - run.Time[i]) <= 1.05 * ShortestSpan).All(k => sets[k] == sets[i]);
            BindingSpan? span = run.Limits.FirstOrDefault(s => s.From <= run.Time[i] && run.Time[i] < s.To);
            if (isSteady && span is not null)
            {
                Assert.True(Set(span.Kinds) == sets[i], $"at {run.Time[i]} s: {string.Join(' ', span.Kinds)}, but {string.Join(' ', driven.Select(d => d.Kinds[i]))}");
                checkedSamples++;
            }
        }

        Assert.True(checkedSamples > 0.2 * sets.Length, $"{checkedSamples} of {sets.Length}");
        Assert.Equal(BindingSpans.Find(run.Time, driven, run.Trace.Time.FindIndex(t => t >= run.Limits[0].From - 1e-12)).SelectMany(s => s.Kinds), run.Limits.SelectMany(s => s.Kinds));
    }

    private static int Set(IEnumerable<BindingKind> kinds)
    {
        int set = kinds.Aggregate(0, (all, k) => all | (1 << (int)k)) & ~1;
        return set == 0 ? 1 : set;
    }

    // every kind that is named, in the file's state and in every state of heat and charge, buys pull, or rears the robot up; a part that changes the pull by nothing is that of no named kind
    [Theory]
    [MemberData(nameof(Scenarios))]
    public void More_of_what_is_named_adds_to_the_pull(string name)
    {
        ScenarioSettings? s = ScenarioReader.Check(Path.Combine(Path.GetDirectoryName(Repository.Scenario("arc"))!, name + ".toml")).Scenario;
        LimitResult r;
        try
        {
            r = LimitFinder.Find(s!);
        }
        catch (SimulationException e)
        {
            Assert.Contains("no motors", e.Message, StringComparison.Ordinal);
            return;
        }

        Assert.All([r.Now, .. r.States], state => Assert.All(state.Bound, b => Assert.True(b.GainPercent > 0.0, $"{state.Kind}: {b.Kind} {b.GainPercent} %")));
        Assert.All(r.Gains.Where(g => g is { Output: LimitOutput.Pull, ChangePercent: 0.0, SlopePercent: 0.0 }), g => Assert.DoesNotContain(r.Now.Bound, b => Input(b.Kind) == g.Input));

        // the table of gains has no row where a tenth more rears the robot up
        foreach (BoundBy b in r.Now.Bound.Where(b => b.Kind is BindingKind.Tyre or BindingKind.CurrentLimit or BindingKind.Motor))
        {
            Gain? gain = r.Gains.SingleOrDefault(g => g.Output == LimitOutput.Pull && g.Input == Input(b.Kind));
            Assert.Equal(gain?.SlopePercent ?? b.GainPercent, b.GainPercent, 1e-6);
        }
    }

    // the same pull at three limits of the current, none of which acts once it stands: the motors stall, then the front tyres slide
    [Theory]
    [InlineData("5.6 A")]
    [InlineData("6.2 A")]
    [InlineData("7 A")]
    public void A_wall_is_pushed_by_the_motors_whatever_current_the_controllers_allow(string limit)
    {
        using var scratch = new ScratchFolder();
        string file = Wall(scratch, text => System.Text.RegularExpressions.Regex.Replace(text, "current_limit = \"[^\"]*\"", $"current_limit = \"{limit}\""));
        using JsonDocument run = JsonDocument.Parse(Cli.Run("run", file, "--json").Output);
        Assert.Equal("motors", run.RootElement.GetProperty("limited_by").GetString());
        JsonElement last = run.RootElement.GetProperty("limits").EnumerateArray().Last();
        Assert.Equal("motors", last.GetProperty("limit").GetString());
        Assert.Equal(["motors", "tyres"], last.GetProperty("limits").EnumerateArray().Select(l => l.GetString()!));
        using JsonDocument limits = JsonDocument.Parse(Cli.Run("limits", file, "--json").Output);
        JsonElement state = limits.RootElement.GetProperty("states")[0];
        Assert.Equal("motors", state.GetProperty("binding").GetString());
        Assert.Equal(["motors", "tyres"], state.GetProperty("bound_by").EnumerateArray().Select(b => b.GetProperty("limit").GetString()!));
        double[] gains = [.. state.GetProperty("bound_by").EnumerateArray().Select(b => b.GetProperty("gain_percent").GetDouble())];
        Assert.True(gains[0] > gains[1] && gains[1] > 0.0, string.Join(" ", gains));
        Assert.Contains("motors", Cli.Run("limits", file).Output.Split('\n')[0], StringComparison.Ordinal);
    }

    // an undamped tyre hops off the floor many times a second and still carries its share: nothing says lifted
    [Theory]
    [InlineData("wall-push", false)]
    [InlineData("pull-test", false)]
    [InlineData("shove-six-four", true)]
    public void A_wheel_that_hops_is_not_lifted(string scenario, bool hops)
    {
        using var scratch = new ScratchFolder();
        string file = Wall(scratch, text => text.Replace("body_damping = \"2 N s/m\"", "body_damping = \"0.1 N s/m\"", StringComparison.Ordinal).Replace("vertical_damping = \"8 s/m\"", "vertical_damping = \"0.05 s/m\"", StringComparison.Ordinal), scenario, all: true);
        string folder = scratch["out"];
        Cli limits = Cli.Run("limits", file, "--no-plots", "--out", folder);
        string bindings = File.ReadAllText(Path.Combine(folder, "binding.csv"));
        string said = Cli.Run("run", file, "--no-plots", "--out", scratch["run"]).Output + Cli.Run("run", file, "--json").Output + limits.Output + Cli.Run("limits", file, "--json").Output;
        Assert.DoesNotContain("lifted_wheels", said, StringComparison.Ordinal);
        Assert.DoesNotContain("a wheel off the floor", said, StringComparison.Ordinal);
        Assert.DoesNotContain("lifted", bindings, StringComparison.Ordinal);

        RunResult run = Simulator.Run(ScenarioReader.Check(file).Scenario!);
        Assert.Equal(hops, run.Trace.Wheels.Any(w => w.Load.Any(v => v == 0.0)));
    }

    // the part that a tenth more of is told of each kind
    private static LimitInput? Input(BindingKind kind) => kind switch
    {
        BindingKind.Tyre => LimitInput.Friction,
        BindingKind.CurrentLimit or BindingKind.Heat => LimitInput.CurrentLimit,
        BindingKind.Battery => LimitInput.BatteryResistance,
        BindingKind.Motor => LimitInput.MotorConstant,
        _ => null,
    };

    private static string Wall(ScratchFolder scratch, Func<string, string> change, string scenario = "wall-push", bool all = false)
    {
        string robots = Path.Combine(Path.GetDirectoryName(Repository.Scenario(scenario))!, "robots");
        Directory.CreateDirectory(scratch["robots"]);
        foreach (string robot in Directory.EnumerateFiles(robots, "*.toml"))
        {
            string text = File.ReadAllText(robot);
            File.WriteAllText(scratch["robots/" + Path.GetFileName(robot)], all || robot.EndsWith("mole.toml", StringComparison.Ordinal) ? change(text) : text);
        }

        File.WriteAllText(scratch["scenario.toml"], File.ReadAllText(Repository.Scenario(scenario)));
        return scratch["scenario.toml"];
    }
}
