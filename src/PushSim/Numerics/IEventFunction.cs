namespace PushSim.Numerics;

/// <summary>A scalar whose zeros are events.</summary>
public interface IEventFunction
{
    /// <summary>The scalar at a time and state, in any unit.</summary>
    /// <param name="t">Time [s].</param>
    /// <param name="y">State, each component in its own unit.</param>
    double Evaluate(double t, ReadOnlySpan<double> y);
}

/// <summary>Which sign changes are events.</summary>
public enum EventDirection
{
    /// <summary>From negative to zero or positive.</summary>
    Rising,

    /// <summary>From positive to zero or negative.</summary>
    Falling,

    /// <summary>Either.</summary>
    Both,
}
