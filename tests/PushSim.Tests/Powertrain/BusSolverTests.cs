using CsCheck;
using PushSim.Numerics;
using PushSim.Powertrain;
using Xunit;

namespace PushSim.Tests.Powertrain;

/// <summary>The bus voltage of random sets of controllers.</summary>
public class BusSolverTests
{
    private sealed record Set(double Voc, double Resistance, Controller[] Controllers);

    private sealed record Controller(
        Wiring Wiring, double Constant, double Winding, double Drop, double Speed, double Duty, bool Regeneration, double Limit, double Standstill);

    private static readonly Gen<Controller> s_controller = Gen.Select(
        Gen.Int[0, 2],
        Gen.Double[0.02, 0.4],
        Gen.Double[0.2, 5.0],
        Gen.OneOf(Gen.Const(0.0), Gen.Double[0.2, 1.5]),
        Gen.Double[-1.2, 1.2],
        Gen.OneOf(Gen.Double[-1.0, 1.0], Gen.Int[-1, 1].Select(i => (double)i)),
        Gen.Bool,
        Gen.Select(Gen.OneOf(Gen.Double[0.1, 20.0], Gen.Const(1e3)), Gen.OneOf(Gen.Const(1.0), Gen.Double[0.1, 0.9]))).Select(
            (wiring, constant, winding, drop, speed, duty, regeneration, last) =>
                new Controller((Wiring)wiring, constant, winding, drop, speed, duty, regeneration, last.Item1, last.Item2));

    private static readonly Gen<Set> s_set = Gen.Select(Gen.Double[6.0, 26.0], Gen.Double[0.01, 0.3], s_controller.Array[1, 8])
        .Select((voc, resistance, controllers) => new Set(voc, resistance, controllers));

    private static (ControllerParameters<R1>[] Parameters, ControllerShape[] Shapes, ControllerWork<R1>[] Work) Prepare(Set set)
    {
        List<MotorParameters<R1>> motors = [];
        List<MotorShape> motorShapes = [];
        List<R1> speeds = [];
        var parameters = new ControllerParameters<R1>[set.Controllers.Length];
        var shapes = new ControllerShape[set.Controllers.Length];
        var work = new ControllerWork<R1>[set.Controllers.Length];
        for (int k = 0; k < parameters.Length; k++)
        {
            Controller c = set.Controllers[k];
            int count = c.Wiring == Wiring.Single ? 1 : 2;
            parameters[k] = new ControllerParameters<R1> { CurrentLimit = c.Limit, OnResistance = 0.05 };
            shapes[k] = new ControllerShape
            {
                Wiring = c.Wiring, Regeneration = c.Regeneration, HasBrushDrop = c.Drop > 0.0,
                HeatIndex = -1, FirstMotor = motors.Count, MotorCount = count,
            };
            work[k].Duty = c.Duty;
            work[k].IsZero = c.Duty == 0.0 ? 1.0 : 0.0;
            for (int m = 0; m < count; m++)
            {
                motors.Add(new MotorParameters<R1>
                {
                    Constant = c.Constant * (1.0 + (0.3 * m)), Resistance = c.Winding, BrushDrop = c.Drop, StandstillShare = c.Standstill, InverseFullTorqueSpeed = 10.0 * c.Constant / set.Voc,
                });
                motorShapes.Add(new MotorShape { HeatIndex = -1, Drive = k, IsSensorless = c.Standstill < 1.0 });
            }

            speeds.Add(c.Speed * set.Voc / (c.Constant * (c.Wiring == Wiring.Series ? 2.3 : 1.15)));
        }

        PowertrainEquations.Gather<R1>(motors.ToArray(), motorShapes.ToArray(), parameters, shapes, speeds.ToArray(), [], new MotorWork<R1>[motors.Count], work);
        return (parameters, shapes, work);
    }

    /// <summary>The same sets with controllers whose motors coast, freewheel or brake between pulses. Where the slope jumps (current that just ends, limits)
    /// the bracket is halved instead, which comes to a microvolt.</summary>
    [Fact]
    public void Bus_voltage_of_pulsed_motors_is_solved_to_a_microvolt()
    {
        int solved = 0;
        PCG random = PCG.Parse("0N0XIzNsQ0O2");
        for (int n = 0; n < 20_000; n++)
        {
            Set set = s_set.Generate(random, null, out _);
            (ControllerParameters<R1>[] parameters, ControllerShape[] shapes, ControllerWork<R1>[] work) = Prepare(set);
            for (int k = 0; k < parameters.Length; k++)
            {
                parameters[k].PulseTimeOverInductance = Math.Pow(10.0, (n % 7) - 3);
                shapes[k] = shapes[k] with { HasPulses = true, BetweenPulses = (BetweenPulses)((n + k) % 3), LimitsEachPulse = n % 5 == 0 };
            }

            if (Residual(set, parameters, shapes, work, 0.5 * set.Voc) >= 0.0)
            {
                continue;
            }

            var battery = new BatteryEquations<R1>(new BatterySettings { Cells = 1, CellVoltage = [(0.0, set.Voc)], Resistance = set.Resistance, Capacity = 1.0 });
            double v = battery.Solve(set.Voc, battery.Numbers.Resistance, parameters, shapes, work, out _).Value;
            double residual = Math.Abs(Residual(set, parameters, shapes, work, v));
            solved++;
            Assert.True(residual < 1e-6, $"set {n}: {residual} V at {v} V of {set.Voc} V");
        }

        Assert.True(solved > 5000, $"only {solved} sets had a certain root");
    }

    private static double Residual(Set set, ControllerParameters<R1>[] parameters, ControllerShape[] shapes, ControllerWork<R1>[] work, double v)
    {
        double power = 0.0;
        for (int k = 0; k < parameters.Length; k++)
        {
            if (work[k].IsZero.Value == 0.0)
            {
                power += ControllerEquations.BusPower<R1>(parameters[k], shapes[k], work[k], v, 1.0 / v, out _).Value;
            }
        }

        return v - set.Voc + (set.Resistance * power / v);
    }

    // a root exists for certain where the residual at half the open-circuit voltage is negative
    [Fact]
    public void Bus_voltage_is_solved_to_1e_9_volt()
    {
        int solved = 0;
        double worst = 0.0;
        PCG random = PCG.Parse("0N0XIzNsQ0O2");
        for (int n = 0; n < 100_000; n++)
        {
            Set set = s_set.Generate(random, null, out _);
            (ControllerParameters<R1>[] parameters, ControllerShape[] shapes, ControllerWork<R1>[] work) = Prepare(set);
            if (Residual(set, parameters, shapes, work, 0.5 * set.Voc) >= 0.0)
            {
                continue;
            }

            var battery = new BatteryEquations<R1>(new BatterySettings { Cells = 1, CellVoltage = [(0.0, set.Voc)], Resistance = set.Resistance, Capacity = 1.0 });
            double v = battery.Solve(set.Voc, battery.Numbers.Resistance, parameters, shapes, work, out _).Value;
            double residual = Math.Abs(Residual(set, parameters, shapes, work, v));
            solved++;
            worst = Math.Max(worst, residual);
            Assert.True(residual < 1e-9, $"{residual} V at {v} V of {set.Voc} V");
            for (int i = 1; i <= 40; i++)
            {
                double above = v + (i / 40.0 * set.Voc);
                Assert.True(Residual(set, parameters, shapes, work, above) > -1e-9, $"another root above {v} V, near {above} V");
            }
        }

        Assert.True(solved > 50000, $"only {solved} sets had a certain root; worst residual {worst}");
    }
}
