using PushSim.Powertrain;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>One part of a robot that is being recorded, as the rows of its trace read it. Only the engine makes one.</summary>
public sealed class TracePart
{
    private readonly TraceTape _tape;
    private readonly string _slug;

    /// <param name="tape">The robot's tape.</param>
    /// <param name="name">Its name in keys; empty for what a robot has one of.</param>
    /// <param name="index">Which of its kind it is in the equations.</param>
    internal TracePart(TraceTape tape, string name = "", int index = 0) => (_tape, Name, _slug, Index) = (tape, name, Slug.Of(name), index);

    internal string Name { get; }

    internal int Index { get; }

    internal RobotEquations<R1> Robot => _tape.System.Equations;

    internal StateLayout Layout => _tape.System.Layout;

    internal ref readonly WheelWork<R1> Wheel => ref Robot.WheelWork[Index];

    internal ref readonly ControllerWork<R1> Controller => ref Robot.ControllerWork[Index];

    internal ref readonly MotorWork<R1> Motor => ref Robot.MotorWork[Index];

    /// <summary>Speed of a motor's shaft [rad/s].</summary>
    internal double MotorSpeed(int drive, int motor) => _tape.System.Scenario.Robot.Drives[drive].Motors[motor].Ratio * _tape.State(Layout.FirstDrive + drive);

    internal TouchSum Touch => _tape.Touch!;

    /// <summary>A series that is worked out at each sample.</summary>
    /// <param name="key">Its key, with * for the part's name.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="read">Its value now.</param>
    internal Series Add(string key, string unit, Func<TracePart, double> read) =>
        _tape.Add(key.Replace("*", _slug, StringComparison.Ordinal), unit, this, read);

    /// <summary>A series that is one of the robot's states.</summary>
    internal Series AddState(string key, string unit, int state) => Add(key, unit, p => p._tape.State(state));

    /// <summary>The same of a state that not every robot has, or of one so far after it: null where it stands nowhere, -1.</summary>
    internal Series? AddIfAny(string key, string unit, int state, int after = 0) => state < 0 ? null : AddState(key, unit, state + after);
}
