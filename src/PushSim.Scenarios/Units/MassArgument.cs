namespace PushSim.Scenarios.Units;

/// <summary>A mass on a command line, written as in a file.</summary>
public static class MassArgument
{
    /// <summary>Reads it.</summary>
    /// <param name="text">For example "1.5 kg" or "450g".</param>
    /// <param name="kilogram">The mass [kg].</param>
    /// <param name="message">What is wrong; empty if nothing is.</param>
    public static bool TryParse(string text, out double kilogram, out string message)
    {
        bool isRead = Quantity.TryParse(text, Dimension.Mass, out Quantity q, out message, out string _);
        kilogram = q.Value;
        return isRead;
    }
}
