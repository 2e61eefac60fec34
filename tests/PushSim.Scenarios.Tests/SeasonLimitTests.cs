using System.Globalization;
using PushSim.Analysis.Fit;
using PushSim.Binding;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Studies;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>
/// Motors in a notebook: what the robot of a row can give tells whether its tyre slid. The numbers are invented around what the shipped robot's motors give; the rule is that of `fit` of a log
/// (<see cref="PullCauseJudge"/>, tested in the engine's own tests).
/// </summary>
public sealed class SeasonLimitTests : IDisposable
{
    private const double Load = 13.3;

    private readonly string _folder = Directory.CreateTempSubdirectory("season").FullName;

    public SeasonLimitTests()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "robots"));
        foreach (string file in new[] { "garage.toml", "robots/mole.toml" })
        {
            File.Copy(Path.Combine(Scenarios(), "garage", file), Path.Combine(_folder, file));
        }
    }

    private double Motors => StallForce.Of(ScenarioReader.Check("mole", new ReadOptions { Garage = _folder }).Robot!)!.Force;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Far_below_the_motors_the_tyre_slid()
    {
        SeasonStudy study = Study(("soft", "mole", "", 0.3 * Motors), ("soft", "mole", "", 0.31 * Motors));
        Assert.Equal(BindingKind.Tyre, study.LimitedBy[("soft", "wiped")]);
        Assert.Empty(study.Bounds);
        Assert.Equal(2, study.Sliding!.Groups[0].Pulls);
    }

    [Fact]
    public void At_the_motors_limit_static_friction_alone_is_bounded()
    {
        SeasonStudy study = Study(("soft", "mole", "", 0.3 * Motors), ("soft", "mole", "", 0.31 * Motors), ("glue", "mole", "", 0.97 * Motors), ("glue", "mole", "", 0.98 * Motors));
        SeasonBound bound = Assert.Single(study.Bounds);
        Assert.Equal(("glue", "wiped", 2, "mole"), (bound.Tyre, bound.State, bound.Pulls, bound.Robot));
        Assert.Equal(0.98 * Motors / Load, bound.AtLeast, 0.01);
        Assert.Equal(BindingKind.Motor, study.LimitedBy[("glue", "wiped")]);
        Assert.Equal(["soft"], study.Sliding!.Groups.Select(g => g.Tyre));
        Assert.Contains(study.Notes, n => n.Contains("static friction is at least", StringComparison.Ordinal));
    }

    [Fact]
    public void More_than_the_motors_give_is_told_and_kept()
    {
        SeasonStudy study = Study(("glue", "mole", "", 1.5 * Motors), ("glue", "mole", "", 1.52 * Motors));
        Assert.Empty(study.Bounds);
        Assert.Null(study.LimitedBy[("glue", "wiped")]);
        Assert.Contains(study.Notes, n => n.Contains("check motor", StringComparison.Ordinal));
    }

    // no robot, an unknown one, and one that has other motors by now: nothing is claimed
    [Theory]
    [InlineData("", "")]
    [InlineData("ghost", "")]
    [InlineData("mole", "2 x another motor")]
    public void Without_the_motors_of_that_day_nothing_is_known(string robot, string motors)
    {
        SeasonStudy study = Study(("glue", robot, motors, 0.97 * Motors), ("glue", robot, motors, 0.98 * Motors));
        Assert.Empty(study.Bounds);
        Assert.Null(study.LimitedBy[("glue", "wiped")]);
        Assert.Equal(robot.Length > 0, study.Notes.Any(n => n.Contains("not known", StringComparison.Ordinal)));
    }

    // "25 mm 22:1" of a person means the same as it did last time, whatever the file calls them
    [Fact]
    public void Motors_in_a_person_s_words_are_those_of_the_last_row()
    {
        SeasonStudy study = Study(("old", "mole", "small ones", 0.97 * Motors), ("glue", "mole", "big ones", 0.97 * Motors), ("glue", "mole", "big ones", 0.98 * Motors));
        Assert.Equal("glue", Assert.Single(study.Bounds).Tyre);
        Assert.Contains(study.Notes, n => n.Contains("small ones", StringComparison.Ordinal));
    }

    private SeasonStudy Study(params (string Tyre, string Robot, string Motors, double Force)[] pulls)
    {
        string path = Path.Combine(_folder, "readings.csv");
        File.WriteAllText(path, "when,tyre,robot,motors,floor,state,load_n,peak_n,sliding_n\n" + string.Concat(pulls.Select((p, i) => string.Create(CultureInfo.InvariantCulture, $"2026-03-{i + 1:00} 18:00,{p.Tyre},{p.Robot},{p.Motors},board,wiped,{Load},{p.Force:0.000},{p.Force:0.000}\n"))));
        SeasonStudy study = SeasonStudy.Of(path);
        Assert.DoesNotContain(study.Notebook.Problems, p => p.Severity == Severity.Error);
        return study;
    }

    private static string Scenarios()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "PushSim.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return Path.Combine(folder!, "scenarios");
    }
}
