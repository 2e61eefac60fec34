using System.Runtime.CompilerServices;

namespace PushSim.Simulation;

/// <summary>What a verdict needs of a scene at the end of a step, in every lane at once; the equations were just evaluated there.</summary>
internal sealed class StepFeatures<T>
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly SceneEquations<T> _equations;
    private readonly BindingReader<T>[] _binding;

    /// <param name="equations">The right-hand side.</param>
    /// <param name="scene">The scene that they are of, or one like it.</param>
    public StepFeatures(SceneEquations<T> equations, SceneSystem scene)
    {
        _equations = equations;
        _binding = [.. scene.Robots.Select(r => new BindingReader<T>(r.Scenario.Robot))];
        Robots = [.. _binding.Select(b => new RobotFeatures<T> { Loads = new T[b.Driven.Length], Forces = new T[b.Driven.Length], Slides = new T[b.Driven.Length], Kinds = new T[b.Driven.Length] })];
    }

    /// <summary>Sum of the normal forces on the first robot [N]; their middle along and across the floor, each times that sum [N m].</summary>
    public T Force, Along, Across;

    /// <summary>Per robot.</summary>
    public readonly RobotFeatures<T>[] Robots;

    /// <summary>Those of a scalar scene.</summary>
    public static StepFeatures<R1> Of(SceneSystem scene) => new(scene.Equations, scene);

    /// <summary>Reads the equations.</summary>
    [MethodImpl(Kernel.Part)]
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
            Read(ref Robots[k], _equations.Robots[k], _binding[k]);
        }
    }

    [MethodImpl(Kernel.Part)]
    private static void Read(ref RobotFeatures<T> f, RobotEquations<T> eq, BindingReader<T> binding)
    {
        T greatest = 0.0;
        for (int i = 0; i < binding.Driven.Length; i++)
        {
            ref Tyres.WheelWork<T> w = ref eq.WheelWork[binding.Driven[i]];
            greatest = T.Max(greatest, w.Load);
            f.Loads[i] = w.Load;
            f.Forces[i] = w.Fx;
        }

        f.Carries = greatest;
        T current = 0.0;
        for (int k = 0; k < eq.ControllerWork.Length; k++)
        {
            current = T.Max(current, T.Abs(eq.ControllerWork[k].Current));
        }

        f.ControllerCurrent = current;
        f.BatteryCurrent = eq.BatteryCurrent;
        f.Voltage = eq.BusVoltage;
        f.Residual = T.Abs(eq.BusResidual);
        ReadPeaks(ref f, eq);
        binding.Read(eq, f.Slides, f.Kinds);
    }

    [MethodImpl(Kernel.Part)]
    private static void ReadPeaks(ref RobotFeatures<T> f, RobotEquations<T> eq)
    {
        (f.MotorCurrent, f.MotorLimit, f.Motor) = (0.0, 0.0, 0.0);
        for (int k = 0; k < eq.ControllerWork.Length; k++)
        {
            ref readonly Powertrain.ControllerShape shape = ref eq.ControllerShapes[k];
            for (int m = shape.FirstMotor; m < shape.FirstMotor + shape.MotorCount; m++)
            {
                // side by side each has its part of the limit, by its conductance
                T share = shape.Wiring == Powertrain.Wiring.Parallel ? eq.ControllerWork[k].Resistance / eq.MotorWork[m].Resistance : (T)1.0;
                T current = T.Abs(eq.MotorWork[m].Current);
                f.MotorLimit = T.IfLess(f.MotorCurrent, current, share * eq.ControllerWork[k].Limit, f.MotorLimit);
                f.Motor = T.IfLess(f.MotorCurrent, current, (double)m, f.Motor);
                f.MotorCurrent = T.Max(f.MotorCurrent, current);
            }
        }

        (f.Load, f.Wheel) = (0.0, 0.0);
        for (int i = 0; i < eq.WheelWork.Length; i++)
        {
            T load = eq.WheelWork[i].Load;
            f.Wheel = T.IfLess(f.Load, load, (double)i, f.Wheel);
            f.Load = T.Max(f.Load, load);
        }
    }
}
