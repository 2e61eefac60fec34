namespace PushSim.Words.Terms;

/// <summary>How a force at less than full throttle is told.</summary>
public static class ThrottleWords
{
    /// <summary>What stands after a force: " at 60 % throttle"; nothing at full throttle.</summary>
    /// <param name="throttle">Throttle, 0..1 [1].</param>
    public static string At(double throttle) => throttle < 1.0 ? FormattableString.Invariant($" at {100.0 * throttle:0} % throttle") : "";

    // Less than this nobody would notice, nor set at the stick [1].
    private const double LeastWorth = 0.01;

    /// <summary>What the best throttle of a push is, and what it is worth, in a sentence; empty where there is no push.</summary>
    /// <param name="best">It; null for none.</param>
    /// <param name="robot">Name of the robot.</param>
    public static string Best(BestThrottle? best, string robot)
    {
        if (best is null)
        {
            return "";
        }

        string asked = FormattableString.Invariant($"{100.0 * best.Asked:0} %");
        string range = FormattableString.Invariant($"{100.0 * best.WorthLow:0} to {100.0 * best.WorthHigh:0} %");
        (string low, string high) = (FormattableString.Invariant($"{100.0 * best.ThrottleLow:0}"), FormattableString.Invariant($"{100.0 * best.ThrottleHigh:0}"));
        string at = low == high ? "" : $", at {low} to {high} %";
        return best.WorthHigh < LeastWorth ? $"{robot} pushes no harder at less than {asked} throttle."
            : FormattableString.Invariant($"Standing, {robot} pushes hardest at {100.0 * best.Throttle:0} % throttle: {best.Push:0.0} N ({ForceWords.Scale(best.Push)}), {100.0 * best.Worth:0} % more than at {asked}; {range} more, by how its grip falls with slip{at}.");
    }
}
