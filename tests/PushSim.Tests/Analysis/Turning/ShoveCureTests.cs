using System.Runtime.CompilerServices;
using PushSim.Analysis.Turning;
using PushSim.Runs;
using PushSim.Scenarios;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using PushSim.Words.Runs;
using PushSim.Words.Terms;
using Xunit;

namespace PushSim.Tests.Analysis.Turning;

/// <summary>A shove whose own tyres chatter names one change that keeps them quiet.</summary>
public class ShoveCureTests
{
    // own check: with the change the same shove is quiet, with the root of its factor it is not
    [Fact]
    public void The_change_named_keeps_the_own_tyres_quiet_and_a_smaller_one_does_not()
    {
        ScenarioSettings shove = OnBouncyTyres();
        RunResult run = ChatterReview.Review(Simulator.Run(shove));
        Assert.Equal(ChatterKind.Buzzes, run.Chatter.Kind);
        ChatterChange cure = run.Chatter.Cure!;
        Assert.Contains(ChatterWords.Of(cure) + " keeps them quiet.", RunWords.Verdict(run), StringComparison.Ordinal);
        Assert.Null(Simulator.Run(TyreNumber.Of(cure.Part).Scaled(shove, cure.Factor)).Answers.Chatter);
        Assert.NotNull(Simulator.Run(TyreNumber.Of(cure.Part).Scaled(shove, Math.Sqrt(cure.Factor))).Answers.Chatter);
    }

    // shove-heavy-grippy on bouncier tyres of its own
    private static ScenarioSettings OnBouncyTyres([CallerFilePath] string here = "")
    {
        string robots = Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "..", "scenarios", "robots");
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, $"""
                robot = '{Path.GetFullPath(Path.Combine(robots, "mole.toml"))}'
                [override]
                "chassis.mass" = "1100 g"
                "tyre.soft.vertical_damping" = "0.2 s/m"
                "tyre.soft.body_damping" = "0.05 N s/m"
                [manoeuvre]
                kind = "shove"
                [opponent]
                robot = '{Path.GetFullPath(Path.Combine(robots, "badger.toml"))}'
                [opponent.override]
                "chassis.mass" = "1900 g"
                "tyre.printed.static_friction" = 0.62
                "tyre.printed.kinetic_friction" = 0.55
                """);
            return ScenarioReader.Read(file, new ReadOptions { AllowOutside = true }).Scenario!;
        }
        finally
        {
            File.Delete(file);
        }
    }
}
