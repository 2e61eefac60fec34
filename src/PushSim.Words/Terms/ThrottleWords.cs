namespace PushSim.Words.Terms;

/// <summary>How a force at less than full throttle is told.</summary>
public static class ThrottleWords
{
    /// <summary>What stands after a force: " at 60 % throttle"; nothing at full throttle.</summary>
    /// <param name="throttle">Throttle, 0..1 [1].</param>
    public static string At(double throttle) => throttle < 1.0 ? FormattableString.Invariant($" at {100.0 * throttle:0} % throttle") : "";
}
