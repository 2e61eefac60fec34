using System.Runtime.CompilerServices;
using PushSim.Numerics;

namespace PushSim.Simulation;

/// <summary>What a verdict needs of a scene at the end of a step, in every lane at once; the equations were just evaluated there.</summary>
/// <typeparam name="T">Number type.</typeparam>
internal sealed class StepFeatures<T>
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly SceneEquations<T> _equations;
    private readonly int[][] _driven;

    /// <param name="equations">The right-hand side.</param>
    /// <param name="scene">The scene that they are of, or one like it.</param>
    public StepFeatures(SceneEquations<T> equations, SceneSystem scene)
    {
        _equations = equations;
        _driven = [.. scene.Robots.Select(r => r.Scenario.Robot.DrivenWheels.ToArray())];
        Robots = [.. _driven.Select(d => new RobotFeatures<T> { Loads = new T[d.Length] })];
    }

    /// <summary>Sum of the normal forces on the first robot [N]; their middle along and across the floor, each times that sum [N m].</summary>
    public T Force, Along, Across;

    /// <summary>Per robot.</summary>
    public readonly RobotFeatures<T>[] Robots;

    /// <summary>Those of a scalar scene.</summary>
    public static StepFeatures<R1> Of(SceneSystem scene) => new(scene.Equations, scene);

    /// <summary>Reads the equations.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Read()
    {
        T force = 0.0, along = 0.0, across = 0.0;
        foreach (SceneContact<T> contact in _equations.Contacts)
        {
            if (contact.First == 0)
            {
                force = force + contact.Pair.NormalForce;
                along = along + (contact.Pair.NormalForce * contact.Pair.CentreX);
                across = across + (contact.Pair.NormalForce * contact.Pair.CentreY);
            }
        }

        Force = force;
        Along = along;
        Across = across;
        for (int k = 0; k < Robots.Length; k++)
        {
            Read(ref Robots[k], _equations.Robots[k], _driven[k]);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void Read(ref RobotFeatures<T> f, RobotEquations<T> eq, int[] driven)
    {
        T greatest = 0.0, load = 0.0, sliding = 0.0;
        for (int i = 0; i < driven.Length; i++)
        {
            ref Tyres.WheelWork<T> w = ref eq.WheelWork[driven[i]];
            greatest = T.Max(greatest, w.Load);
            f.Loads[i] = w.Load;
            load = load + w.Load;
            sliding = sliding + T.IfLess(w.Alpha, LimitBounds.AtItsGrip, 0.0, w.Load);
        }

        f.Carries = greatest;
        T limiting = 0.0, command = 0.0, current = 0.0;
        for (int k = 0; k < eq.ControllerWork.Length; k++)
        {
            ref Powertrain.ControllerWork<T> c = ref eq.ControllerWork[k];
            limiting = limiting + c.IsLimiting;
            command = command + T.Abs(c.Duty);
            current = T.Max(current, T.Abs(c.Current));
        }

        f.ControllerCurrent = current;
        f.BatteryCurrent = eq.BatteryCurrent;
        f.Voltage = eq.BusVoltage;
        f.Residual = T.Abs(eq.BusResidual);
        T limit = T.IfLess(eq.BusVoltage, (1.0 - LimitBounds.BatterySag) * eq.OpenCircuit, (double)PushLimit.Battery, (double)PushLimit.Motors);
        limit = T.IfLess(LimitBounds.BindingShare * eq.ControllerWork.Length, limiting, (double)PushLimit.Controllers, limit);
        limit = T.IfLess(LimitBounds.BindingShare * load, sliding, (double)PushLimit.Tyres, limit);
        f.Limit = T.IfLess(0.0, command, limit, (double)PushLimit.Idle);
    }
}

/// <summary>What a verdict needs of one robot.</summary>
/// <typeparam name="T">Number type.</typeparam>
internal struct RobotFeatures<T>
    where T : struct, IReal<T>
{
    /// <summary>Greatest load of a driven wheel [N].</summary>
    public T Carries;

    /// <summary>Load of each driven wheel [N].</summary>
    public T[] Loads;

    /// <summary>Battery current, greatest controller current [A], battery voltage, residual of the bus equation [V].</summary>
    public T BatteryCurrent, ControllerCurrent, Voltage, Residual;

    /// <summary>What limits the push now if no wheel is lifted, a <see cref="PushLimit"/> [1].</summary>
    public T Limit;
}
