using PushSim.Binding;

namespace PushSim.Simulation;

/// <summary>What binds each wheel of one robot, sample by sample. All is allocated before the run.</summary>
internal sealed class BindingRecord
{
    private readonly RobotSystem _system;
    private readonly double[] _time;
    private readonly int[] _driven;
    private readonly SteadyWheel[] _steady;
    private readonly BindingKind[][] _kinds;

    /// <param name="system">The robot, whose equations were evaluated at each sample.</param>
    /// <param name="time">Sample times [s].</param>
    public BindingRecord(RobotSystem system, double[] time)
    {
        (_system, _time) = (system, time);
        int wheels = system.Scenario.Robot.Wheels.Count;
        _driven = [.. Enumerable.Range(0, wheels).Select(w => system.Scenario.Robot.DrivenWheels.ToList().IndexOf(w))];
        _steady = [.. Enumerable.Repeat(new SteadyWheel(system.Static.Loads.Average()), wheels)];
        _kinds = [.. _driven.Select(_ => new BindingKind[time.Length])];
    }

    /// <summary>The wheels, cut to the samples taken.</summary>
    /// <param name="trace">The robot's trace.</param>
    /// <param name="count">How many [1].</param>
    public IReadOnlyList<BindingMoments> Wheels(Trace trace, int count) =>
        [.. _kinds.Select((kinds, w) => new BindingMoments(w, _driven[w] >= 0, count == _time.Length ? kinds : kinds[..count], trace.Wheels[w].LongitudinalForce))];

    /// <summary>Takes a sample.</summary>
    /// <param name="index">Its number.</param>
    /// <param name="features">What was read of the robot there.</param>
    public void Sample(int index, in RobotFeatures<R1> features)
    {
        double time = index > 0 ? _time[index] - _time[index - 1] : 0.0;
        for (int w = 0; w < _kinds.Length; w++)
        {
            ref Tyres.WheelWork<R1> work = ref _system.Equations.WheelWork[w];
            int d = _driven[w];
            _kinds[w][index] = _steady[w].Next(work.Load.Value, d < 0 ? 0.0 : features.Slides[d].Value, d < 0 ? BindingKind.Nothing : (BindingKind)(int)features.Kinds[d].Value, time);
        }
    }
}
