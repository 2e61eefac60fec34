namespace PushSim.Simulation;

/// <summary>Names as parts of keys.</summary>
public static class Slug
{
    /// <summary>Lower case, everything but letters and digits, of any script, as one underscore: "Front left" becomes "front_left".</summary>
    public static string Of(string name)
    {
        char[] characters = [.. name.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : '_')];
        return string.Join('_', new string(characters).Split('_', StringSplitOptions.RemoveEmptyEntries));
    }
}
