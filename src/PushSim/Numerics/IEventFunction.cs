namespace PushSim.Numerics;

/// <summary>A scalar whose zeros are events.</summary>
internal interface IEventFunction
{
    /// <summary>The scalar at a time and state, in any unit.</summary>
    /// <param name="t">Time [s].</param>
    /// <param name="y">State, each component in its own unit.</param>
    double Evaluate(double t, ReadOnlySpan<double> y);
}
