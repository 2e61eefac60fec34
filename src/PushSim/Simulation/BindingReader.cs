using System.Runtime.CompilerServices;
using PushSim.Binding;
using PushSim.Powertrain;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>Puts a robot's state to <see cref="BindingRule"/>, driven wheel by driven wheel. Which controllers feed a wheel, and which wheels are in series with it, is found once.</summary>
internal sealed class BindingReader<T>
    where T : struct, IReal<T>
{
    private readonly int[][] _controllers;
    private readonly int[][] _series;

    /// <param name="robot">The robot, in canonical order.</param>
    public BindingReader(RobotSettings robot)
    {
        Driven = [.. robot.DrivenWheels];
        _controllers = [.. Driven.Select(w => Feeding(robot, w).ToArray())];
        _series = [.. Driven.Select((w, i) => InSeries(robot, w, _controllers[i]))];
    }

    /// <summary>The driven wheels.</summary>
    public int[] Driven { get; }

    /// <summary>Which driven wheels slide where the equations stand, and what binds each while it does not and is not lifted: <see cref="SteadyWheel"/> puts the two together over time.</summary>
    /// <param name="eq">The equations, just evaluated.</param>
    /// <param name="slides">Takes 1 for each driven wheel that slides, 0 for the others [1].</param>
    /// <param name="kinds">Takes a <see cref="BindingKind"/> as a number for each driven wheel.</param>
    [MethodImpl(Kernel.Part)]
    public void Read(RobotEquations<T> eq, Span<T> slides, Span<T> kinds)
    {
        for (int i = 0; i < Driven.Length; i++)
        {
            ref WheelParameters<T> p = ref eq.Wheels[Driven[i]];
            ref readonly WheelShape shape = ref eq.Kinds[Driven[i]].Shape;
            ref WheelWork<T> w = ref eq.WheelWork[Driven[i]];
            T across = w.Fy / p.LateralRatio;
            T grip = shape.Plain ? T.Sqrt((w.Fx * w.Fx) + (across * across)) / T.Max(w.Load * w.Friction, 1e-30) : 0.0;
            slides[i] = BindingRule.Slides(shape, w.Alpha, w.SlipSpeed, grip);
        }

        Read(eq.Controllers, eq.ControllerWork, eq.BusVoltage, eq.OpenCircuit, slides, default, eq.WheelWork, kinds);
    }

    /// <summary>What binds each driven wheel where it is known which tyres slide.</summary>
    /// <param name="controllers">The controllers.</param>
    /// <param name="work">What they do.</param>
    /// <param name="bus">Battery voltage [V].</param>
    /// <param name="open">Battery voltage without load [V].</param>
    /// <param name="mates">1 for each driven wheel that slides, as those in series with it see it, 0 for the others [1].</param>
    /// <param name="own">The same as it counts for itself; empty where nothing slides for itself [1].</param>
    /// <param name="wheels">All wheels, to see which shorted motors brake; empty where none does.</param>
    /// <param name="kinds">Takes a <see cref="BindingKind"/> as a number for each driven wheel.</param>
    [MethodImpl(Kernel.Part)]
    public void Read(ControllerParameters<T>[] controllers, ControllerWork<T>[] work, T bus, T open, ReadOnlySpan<T> mates, ReadOnlySpan<T> own, ReadOnlySpan<WheelWork<T>> wheels, Span<T> kinds)
    {
        WheelMoment<T> m = default;
        (m.Lifted, m.Bus, m.OpenCircuit) = (0.0, bus, open);
        for (int i = 0; i < Driven.Length; i++)
        {
            (m.Slides, m.Command, m.Limiting, m.FoldedBack, m.SeriesSlides) = (own.IsEmpty ? 0.0 : own[i], 0.0, 0.0, 0.0, 0.0);
            T moves = wheels.IsEmpty ? 0.0 : T.Max(T.Abs(wheels[Driven[i]].SurfaceSpeed), wheels[Driven[i]].SlipSpeed);
            double share = 1.0 / Math.Max(1, _controllers[i].Length);
            foreach (int k in _controllers[i])
            {
                m.Command = m.Command + T.Abs(work[k].Duty) + T.IfLess(BindingRule.Creep, moves, work[k].IsZero - work[k].IsOpen, 0.0);
                m.Limiting = m.Limiting + (share * work[k].IsLimiting);
                m.FoldedBack = m.FoldedBack + T.IfLess(work[k].Limit, controllers[k].CurrentLimit, share, 0.0);
            }

            foreach (int mate in _series[i])
            {
                m.SeriesSlides = T.Max(m.SeriesSlides, mates[mate]);
            }

            kinds[i] = BindingRule.Of(m);
        }
    }

    private static IEnumerable<int> Feeding(RobotSettings robot, int wheel) =>
        Enumerable.Range(0, robot.Controllers.Count).Where(k => robot.Controllers[k].Motors.Any(m => robot.Drives[m.Drive].Wheels.Any(w => w.Wheel == wheel)));

    // Driven wheels on other drives whose motors are in one series with this wheel's
    private int[] InSeries(RobotSettings robot, int wheel, int[] controllers)
    {
        IEnumerable<int> drives = controllers.Where(k => robot.Controllers[k].Wiring == Wiring.Series).SelectMany(k => robot.Controllers[k].Motors).Select(m => m.Drive)
            .Where(d => robot.Drives[d].Wheels.All(w => w.Wheel != wheel));
        HashSet<int> wheels = [.. drives.SelectMany(d => robot.Drives[d].Wheels).Select(w => w.Wheel)];
        return [.. Enumerable.Range(0, Driven.Length).Where(i => wheels.Contains(Driven[i]))];
    }
}
