using PushSim.Binding;
using PushSim.Numerics;

namespace PushSim.Simulation;

/// <summary>What binds each wheel of one robot, sample by sample. All is allocated before the run.</summary>
internal sealed class BindingRecord
{
    private readonly RobotSystem _system;
    private readonly double[] _time;
    private readonly int[] _driven;
    private readonly SteadyLoad[] _loads;
    private readonly BindingMoments[] _wheels;

    /// <param name="system">The robot, whose equations were evaluated at each sample.</param>
    /// <param name="time">Sample times [s].</param>
    public BindingRecord(RobotSystem system, double[] time)
    {
        (_system, _time) = (system, time);
        int wheels = system.Scenario.Robot.Wheels.Count;
        _driven = [.. Enumerable.Range(0, wheels).Select(w => system.Scenario.Robot.DrivenWheels.ToList().IndexOf(w))];
        _loads = [.. Enumerable.Repeat(new SteadyLoad(system.Static.Loads.Average()), wheels)];
        _wheels = [.. _driven.Select((d, w) => new BindingMoments(w, d >= 0, new BindingKind[time.Length], new double[time.Length]))];
    }

    /// <summary>The wheels, cut to the samples taken.</summary>
    /// <param name="count">How many [1].</param>
    public IReadOnlyList<BindingMoments> Wheels(int count) =>
        [.. _wheels.Select(w => count == _time.Length ? w : w with { Kinds = w.Kinds[..count], Force = w.Force[..count] })];

    /// <summary>Takes a sample.</summary>
    /// <param name="index">Its number.</param>
    /// <param name="features">What was read of the robot there.</param>
    public void Sample(int index, in RobotFeatures<R1> features)
    {
        double time = index > 0 ? _time[index] - _time[index - 1] : 0.0;
        for (int w = 0; w < _wheels.Length; w++)
        {
            ref Tyres.WheelWork<R1> work = ref _system.Equations.WheelWork[w];
            bool isLifted = _loads[w].IsLifted(work.Load.Value, time);
            _wheels[w].Force[index] = work.Fx.Value;
            _wheels[w].Kinds[index] = isLifted ? BindingKind.Lifted : _driven[w] < 0 ? BindingKind.Nothing : (BindingKind)(int)features.Kinds[_driven[w]].Value;
        }
    }
}
