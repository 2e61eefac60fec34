namespace PushSim.Analysis.Wear;

/// <summary>The tyres of a robot on a scale before and after some driving.</summary>
/// <param name="Before">Mass before [kg].</param>
/// <param name="After">Mass after [kg].</param>
/// <param name="Time">Time driven in between [s].</param>
/// <param name="Step">One unit of the last digit that the scale shows [kg].</param>
public sealed record Weighing(double Before, double After, double Time, double Step)
{
    /// <summary>What was lost; negative where the scale shows more than before [kg].</summary>
    public double Loss => Before - After;
}
