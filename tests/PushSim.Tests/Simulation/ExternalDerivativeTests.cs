using PushSim.Numerics;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Exact derivatives of the whole model (dual numbers) against central differences of its scalar form.</summary>
public class ExternalDerivativeTests
{
    private const double Time = 0.25;

    private readonly ScenarioSettings _scenario;
    private readonly RobotSystem _system;
    private readonly double[] _state;

    public ExternalDerivativeTests()
    {
        ScenarioSettings arc = ExternalRobots.Scenario(TestRobots.FourWheels(), Time, throttle: 0.5, turn: 0.2);
        _scenario = arc with { Robot = ModelBuilder.InCanonicalOrder(arc.Robot) };
        _state = ExternalRobots.RunFrom(_scenario, (_, _) => { }, Time)[^1].Y;
        _system = new RobotSystem(_scenario);

        // steady sliding holds the gear friction right on the kink of its switch; a derivative needs a smooth place
        foreach (int i in _system.Layout.DriveBristle)
        {
            _state[i] *= 0.93;
        }

        _system.EnterSegment(0);
    }

    private RobotEquations<Dual<R1>> Dual()
    {
        RobotEquations<Dual<R1>> dual = ModelBuilder.Build<Dual<R1>>(_scenario, _system.Layout);
        new NumberCopy<Dual<R1>>().Carry(dual.Commands, _system.Equations.Commands);
        return dual;
    }

    private double[] Derivative(double[] y)
    {
        double[] dy = new double[y.Length];
        _system.Evaluate(Time, 0.0, [.. y], dy);
        return dy;
    }

    private double[] Slopes(RobotEquations<Dual<R1>> dual, int seeded)
    {
        Dual<R1>[] y = [.. _state.Select((v, i) => new Dual<R1>(v, i == seeded ? 1.0 : 0.0))];
        var dy = new Dual<R1>[y.Length];
        dual.Evaluate(Time, y, dy);
        return [.. dy.Select(d => d.Slope.Value)];
    }

    // central differences at two widths, extrapolated; two widths that disagree mean a kink in between
    private static double[] Difference(Func<double, double[]> of, double h)
    {
        double[] a = Central(h);
        double[] b = Central(0.5 * h);
        return [.. a.Select((wide, i) => ((4.0 * b[i]) - wide) / 3.0)];

        double[] Central(double step)
        {
            double[] plus = of(step);
            double[] minus = of(-step);
            return [.. plus.Select((p, i) => (p - minus[i]) / (2.0 * step))];
        }
    }

    // size of the terms that add up to each derivative: what rounding leaves of a difference scales with it
    private double[] Sizes(double[][] jacobian)
    {
        double[] dy = Derivative(_state);
        return [.. dy.Select((d, i) => Math.Abs(d) + _state.Select((y, j) => Math.Abs(jacobian[j][i] * y)).Sum())];
    }

    private static void AssertSame(double[] exact, double[] difference, double[] sizes, double h, string input)
    {
        for (int i = 0; i < exact.Length; i++)
        {
            double rounding = 1e-15 * sizes[i] / h;
            double bound = (1e-6 * Math.Abs(exact[i])) + rounding;
            Assert.True(Math.Abs(exact[i] - difference[i]) <= bound, $"d(dy[{i}])/d({input}): {exact[i]:R}, by differences {difference[i]:R}; rounding {rounding:R}, step {h:R}");
        }
    }

    // own check: two ways to the same derivative
    [Fact]
    public void Derivative_by_every_state_agrees_with_differences()
    {
        RobotEquations<Dual<R1>> dual = Dual();
        double[][] jacobian = [.. _state.Select((_, j) => Slopes(dual, j))];
        double[] sizes = Sizes(jacobian);
        int felt = 0;
        for (int j = 0; j < _state.Length; j++)
        {
            double h = 5e-5 * Math.Max(Math.Abs(_state[j]), 1e-4);
            int index = j;
            double[] difference = Difference(
                d =>
                {
                    double[] y = [.. _state];
                    y[index] += d;
                    return Derivative(y);
                },
                h);
            felt += jacobian[j].Where((e, i) => Math.Abs(e) > 1e-9 * sizes[i] / h).Count();
            AssertSame(jacobian[j], difference, sizes, h, $"y[{j}]");
        }

        Assert.True(felt > 200, $"only {felt} derivatives stand out of the rounding");
    }

    // own check: the battery's voltage equation is solved inside, so this is a derivative through its solver
    [Fact]
    public void Derivative_by_a_parameter_agrees_with_differences()
    {
        double resistance = _scenario.Robot.Battery!.Resistance;
        RobotEquations<Dual<R1>> dual = Dual();
        dual.Battery!.Numbers.Resistance = new Dual<R1>(resistance, 1.0);
        double[] exact = Slopes(dual, -1);
        double h = 1e-3 * resistance;
        double[] difference = Difference(
            d =>
            {
                _system.Equations.Battery!.Numbers.Resistance = resistance + d;
                return Derivative(_state);
            },
            h);
        Assert.NotEqual(0.0, exact[_system.Layout.FirstDrive]);
        double[] sizes = Sizes([.. _state.Select((_, j) => Slopes(Dual(), j))]);
        AssertSame(exact, difference, sizes, h, "battery resistance");
    }

    // own check: derivative of the forward acceleration by the mass
    [Fact]
    public void Derivative_of_acceleration_by_mass_agrees_with_differences()
    {
        double mass = _scenario.Robot.Chassis.Mass;
        RobotEquations<Dual<R1>> dual = Dual();
        dual.Body.InverseMass = 1.0 / new Dual<R1>(mass, 1.0);
        double exact = Slopes(dual, -1)[StateLayout.U];
        double difference = Difference(
            d =>
            {
                _system.Equations.Body.InverseMass = 1.0 / (mass + d);
                return Derivative(_state);
            },
            1e-3 * mass)[StateLayout.U];
        Assert.True(Math.Abs(exact) > 1e-3);
        Assert.Equal(difference, exact, 1e-6 * Math.Abs(exact));
    }
}
