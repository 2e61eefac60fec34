using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tests.Simulation;
using PushSim.Tyres;

namespace PushSim.Tests.Analysis;

/// <summary>A body on four skids that is dragged over the floor at an even speed.</summary>
internal static class Dragged
{
    public const double Gravity = 9.81;

    public const double Stiffness = 3000.0;

    public static TyreSettings Tyre(double friction = 0.8) => ExternalRobots.Coulomb(friction) with { PlainFriction = false, SpecificWear = 150e-9 / 400.0 };

    /// <param name="tyre">The skids' tyre.</param>
    /// <param name="weight">Weight of the body [N].</param>
    /// <param name="speed">Speed of the anchor [m/s].</param>
    /// <param name="end">End of the run [s].</param>
    /// <param name="dust">Dust on the floor [1].</param>
    public static ScenarioSettings Scenario(TyreSettings tyre, double weight, double speed, double end, double dust = 0.0)
    {
        RobotSettings robot = ExternalRobots.FourCorners(ExternalRobots.Body(weight / Gravity, 0.02), tyre, 0.12, 0.15, 0.03, 1e-5, null, null, isSkid: true);
        return new ScenarioSettings
        {
            Name = "dragged",
            Robot = robot,
            Floor = new FloorSettings { Gravity = Gravity, Abrasiveness = 1.0, Dust = dust },

            // pulled at the floor from far away, so that the load stays that of the weight; it moves from the start, the tether taut
            Tether = new TetherSettings
            {
                HookX = 0.1, HookHeight = 1e-6, AnchorX = 100.0, AnchorHeight = 1e-6, Slack = speed > 0.0 ? -tyre.KineticFriction * weight / Stiffness : 0.0,
                Stiffness = Stiffness, Damping = 5.0, AnchorSpeed = [(0.0, speed)],
            },
            Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.DragTest, EndTime = end, InitialSpeed = speed, Commands = [] },
            Numerics = new NumericsSettings { Tolerance = 1e-6, SampleRate = 200.0 },
        };
    }

    /// <summary>Growth over the second half of the run.</summary>
    public static double Late(Series series) => series[^1] - series[series.Length / 2];
}
