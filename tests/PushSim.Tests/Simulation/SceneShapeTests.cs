using System.Reflection;
using System.Runtime.CompilerServices;
using PushSim.Contact;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Numbers of the equations apart from their shape: lanes are filled by one loop over the first and compared by the second. Own checks.</summary>
public class SceneShapeTests
{
    public static TheoryData<Type> Groups => [.. typeof(INumbers<>).Assembly.GetTypes().Where(t =>
        t.IsValueType && t.IsGenericTypeDefinition && new[] { "Parameters`1", "Numbers`1", "Command`1", "BodyPose`1" }.Any(t.Name.EndsWith))];

    public static TheoryData<Type> Shapes => [.. typeof(INumbers<>).Assembly.GetTypes().Where(t => t.IsValueType && t.Name.EndsWith("Shape"))];

    // what is filled as a span of numbers must hold nothing else
    [Theory]
    [MemberData(nameof(Groups))]
    public void A_group_of_numbers_holds_numbers_only(Type group)
    {
        FieldInfo[] fields = group.MakeGenericType(typeof(R4)).GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic);
        Assert.All(fields, f => Assert.Equal(typeof(R4), f.FieldType));
        MethodInfo size = typeof(Unsafe).GetMethod(nameof(Unsafe.SizeOf))!.MakeGenericMethod(group.MakeGenericType(typeof(R4)));
        Assert.Equal(fields.Length * Unsafe.SizeOf<R4>(), (int)size.Invoke(null, null)!);
    }

    [Fact]
    public void There_are_groups_of_every_part() => Assert.True(Groups.Count >= 12, $"{Groups.Count} groups");

    [Theory]
    [MemberData(nameof(Shapes))]
    public void A_shape_holds_no_number(Type shape)
    {
        Assert.All(shape.GetFields(BindingFlags.Instance | BindingFlags.NonPublic), f => Assert.True(f.FieldType == typeof(int) || f.FieldType == typeof(bool) || f.FieldType.IsEnum, f.Name));
    }

    [Fact]
    public void Numbers_that_differ_leave_the_shape_alike()
    {
        ScenarioSettings s = TestRobots.Shove(TestRobots.FourWheels(), TestRobots.FourWheels());
        ScenarioSettings other = s with { Robot = s.Robot with { Chassis = s.Robot.Chassis with { Mass = 1.1 * s.Robot.Chassis.Mass } }, Floor = s.Floor with { FrictionScale = 0.9 } };
        Assert.True(Shape(s) == Shape(other));
        Assert.Equal(Shape(s).GetHashCode(), Shape(other).GetHashCode());
    }

    [Theory]
    [InlineData("plain tyres")]
    [InlineData("heat")]
    [InlineData("wiring")]
    [InlineData("table")]
    [InlineData("dust")]
    [InlineData("wall")]
    [InlineData("corners")]
    public void Another_switch_is_another_shape(string what)
    {
        ScenarioSettings s = TestRobots.Shove(TestRobots.FourWheels(), TestRobots.FourWheels());
        RobotSettings r = s.Robot;
        RobotSettings WithTyre(Func<TyreSettings, TyreSettings> of) => r with { Wheels = [.. r.Wheels.Select(w => w with { Tyre = of(w.Tyre) })] };
        ScenarioSettings other = what switch
        {
            "plain tyres" => s with { Robot = WithTyre(t => t with { PlainFriction = !t.PlainFriction }) },
            "table" => s with { Robot = WithTyre(t => t with { FrictionTable = [(0.0, 1.0), (0.1, 0.9)] }) },
            "dust" => s with { Robot = WithTyre(t => t with { FoulingDistance = 1.0 }), Floor = s.Floor with { Dust = 1.0 } },
            "heat" => s with { Robot = r with { Controllers = [.. r.Controllers.Select(c => c with { ThermalResistance = 5.0, HeatCapacity = 3.0 })] } },
            "wiring" => s with { Robot = r with { Controllers = [.. r.Controllers.Select(c => c with { Wiring = c.Wiring == Wiring.Parallel ? Wiring.Single : Wiring.Parallel })] } },
            "wall" => s with { Walls = [new WallSettings(2.0, -1.0, 2.0, 1.0)] },
            _ => s with { Robot = r with { Outline = Pointed(r) } },
        };
        Assert.True(Shape(s) != Shape(other));
    }

    [Fact]
    public void Numbers_of_another_shape_are_refused()
    {
        ScenarioSettings s = TestRobots.Shove(TestRobots.FourWheels(), TestRobots.FourWheels());
        SceneSystem scene = new(SceneBuilder.InCanonicalOrder(s));
        var lanes = new SceneEquations<R4>([ModelBuilder.Build<R4>(scene.Robots[0].Scenario, scene.Robots[0].Layout)], []);
        Assert.Throws<ArgumentException>(() => new LaneNumbers<R4>().Carry(lanes, 0, scene.Equations));
    }

    private static SceneShape Shape(ScenarioSettings s) => new SceneSystem(SceneBuilder.InCanonicalOrder(s)).Shape;

    // one corner more than its box
    private static OutlineSettings Pointed(RobotSettings robot)
    {
        OutlineSettings box = robot.OutlineOrBox;
        return box with { Corners = [box.Corners[0], (box.Corners[0].X + 0.02, 0.0), .. box.Corners.Skip(1)], Faces = [box.Faces[0], .. box.Faces] };
    }
}
