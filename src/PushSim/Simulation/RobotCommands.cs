namespace PushSim.Simulation;

/// <summary>What a robot is told in a segment of its commands: the numbers that jump where a segment begins.</summary>
internal sealed class RobotCommands<T>(int controllers, int drives) : INumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>When the segment begins, and how the anchor moves.</summary>
    public SegmentNumbers<T> Segment;

    /// <summary>What each controller is told.</summary>
    public readonly ControllerCommand<T>[] Controllers = Aligned.Array<ControllerCommand<T>>(controllers);

    /// <summary>What holds or turns each drive.</summary>
    public readonly DriveCommand<T>[] Drives = Aligned.Array<DriveCommand<T>>(drives);

    public void Show(NumberWalk<T> walk)
    {
        walk.Take(ref Segment);
        walk.Take(Controllers);
        walk.Take(Drives);
    }
}

/// <summary>Numbers of a segment of the commands.</summary>
internal struct SegmentNumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Start of the segment [s]; anchor speed there [m/s] and its slope [m/s^2].</summary>
    public T Start, AnchorSpeed, AnchorSlope;
}

/// <summary>What a controller is told in a segment.</summary>
internal struct ControllerCommand<T>
    where T : struct, IReal<T>
{
    /// <summary>Command at the segment's start [1] and its slope [1/s].</summary>
    public T Value, Slope;

    /// <summary>1 where it stands at zero command, 0 else; 1 where its terminals are open then, 0 else.</summary>
    public T IsZero, IsOpen;
}

/// <summary>What holds or turns a drive in a segment.</summary>
internal struct DriveCommand<T>
    where T : struct, IReal<T>
{
    /// <summary>1 where it is held: all its controllers stand at zero in mode locked; 0 else.</summary>
    public T IsHeld;

    /// <summary>Acceleration of a drive that is turned from outside, 0 else [rad/s^2].</summary>
    public T GivenRate;
}
