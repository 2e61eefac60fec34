using PushSim.Contact;
using PushSim.Surroundings;

namespace PushSim.Simulation;

/// <summary>Puts a scene together: the scenario as each robot sees it, and every contact that may come about.</summary>
internal static class SceneBuilder
{
    // Bodies of the last two robots of a thread: balance, underside and contacts of a match ask for the same two. A body never changes.
    [ThreadStatic]
    private static (RobotSettings Robot, ContactBody Body)[]? s_bodies;

    /// <summary>The scenario with every robot's wheels in canonical order.</summary>
    public static ScenarioSettings InCanonicalOrder(ScenarioSettings scenario) => scenario with
    {
        Robot = ModelBuilder.InCanonicalOrder(scenario.Robot),
        Opponent = scenario.Opponent is OpponentSettings o ? o with { Robot = ModelBuilder.InCanonicalOrder(o.Robot) } : null,
    };

    public static IReadOnlyList<RobotSystem> Robots(ScenarioSettings scenario)
    {
        ShoveSettings? shove = scenario.Opponent is null ? null : scenario.Shove;
        // nobody to steer to
        ManoeuvreSettings alone = scenario.Manoeuvre.Driver.Steering > 0.0 && scenario.Opponent is null
            ? scenario.Manoeuvre with { Driver = scenario.Manoeuvre.Driver with { Steering = 0.0 } } : scenario.Manoeuvre;
        RobotSystem first = new(scenario with { Manoeuvre = alone, Opponent = null, Walls = [] }, StartPose.Of(scenario.Robot, scenario.Manoeuvre.InitialHeading, shove));
        if (scenario.Opponent is not OpponentSettings other)
        {
            return [first];
        }

        ScenarioSettings own = scenario with
        {
            Robot = other.Robot,
            Manoeuvre = other.Manoeuvre with { EndTime = scenario.Manoeuvre.EndTime, Kind = scenario.Manoeuvre.Kind },
            Floor = Turned(scenario.Floor),
            Tether = null,
            Opponent = null,
            Walls = [],
        };
        return [first, new RobotSystem(own, StartPose.Of(other.Robot, other.Manoeuvre.InitialHeading, shove))];
    }

    public static SceneContact<T>[] Contacts<T>(ScenarioSettings scenario)
        where T : struct, IReal<T>
    {
        List<SceneContact<T>> contacts = [];
        RobotSettings[] robots = scenario.Opponent is null ? [scenario.Robot] : [scenario.Robot, scenario.Opponent.Robot];
        if (robots.Length == 2)
        {
            contacts.Add(new SceneContact<T> { First = 0, Second = 1, Pair = new ContactPair<T>(Body(robots[0]), Body(robots[1]), scenario.Contact) });
        }

        for (int k = 0; k < robots.Length; k++)
        {
            foreach (WallSettings wall in scenario.Walls)
            {
                contacts.Add(new SceneContact<T>
                {
                    First = k, Second = -1, Pair = new ContactPair<T>(Body(robots[k]), ContactBody.FromWall(wall), scenario.Contact), WallPose = ContactBody.WallPose<T>(wall),
                });
            }
        }

        return [.. contacts];
    }

    /// <summary>A robot's body.</summary>
    public static ContactBody Body(RobotSettings robot)
    {
        (RobotSettings Robot, ContactBody Body)[] known = s_bodies ??= new (RobotSettings, ContactBody)[2];
        foreach ((RobotSettings of, ContactBody body) in known)
        {
            if (ReferenceEquals(of, robot))
            {
                return body;
            }
        }

        known[1] = known[0];
        known[0] = (robot, ContactBody.FromOutline(robot.OutlineOrBox, robot.Chassis.CentreOfMassX, robot.Chassis.CentreOfMassY, robot.Chassis.CentreOfMassHeight, Wheels(robot)));
        return known[0].Body;
    }

    private static RoundWheel[] Wheels(RobotSettings robot) =>
    [
        .. robot.Wheels.Select(w => new RoundWheel(
            w.X - robot.Chassis.CentreOfMassX, w.Y - robot.Chassis.CentreOfMassY, w.Radius + w.Height - robot.Chassis.CentreOfMassHeight,
            w.Radius, 0.5 * robot.WidthOf(w), w.Tyre.VerticalStiffness, w.Tyre.KineticFriction)),
    ];

    // The floor in axes turned by half a turn.
    private static FloorSettings Turned(FloorSettings floor) => floor with
    {
        SlopeX = -floor.SlopeX,
        SlopeY = -floor.SlopeY,
        Patches = [.. floor.Patches.Select(p => p with { MinX = -p.MaxX, MaxX = -p.MinX, MinY = -p.MaxY, MaxY = -p.MinY })],
    };
}
