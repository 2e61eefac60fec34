namespace PushSim.Numerics;

/// <summary>Optional side of an <see cref="IAdditiveSystem"/> whose right-hand side jumps at the breakpoints of a run. The driver
/// names the segment before it evaluates anything in it, and after it has finished the one before: an evaluation at a
/// breakpoint's time belongs to the segment last named, so the slope at a step's end is the one before the jump.</summary>
public interface ISegmented
{
    /// <summary>Makes a segment current.</summary>
    /// <param name="index">Number of breakpoints at or before the segment's start [1]: 0 before the first breakpoint.</param>
    void EnterSegment(int index);

    /// <summary>Longest step of the current segment, positive [s]; read once, after <see cref="EnterSegment"/>. For systems that
    /// must not be shaken by steps at the edge of stability while they rest.</summary>
    double LongestStep => double.PositiveInfinity;
}
