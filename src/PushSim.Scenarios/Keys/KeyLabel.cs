namespace PushSim.Scenarios.Keys;

/// <summary>A path of a value in plain words, "sliding friction of mole's soft tyre" for "tyre.soft.kinetic_friction": what pictures, tables and pages call it. Scripts keep the path.</summary>
public static class KeyLabel
{
    private const string Opponent = "opponent.";

    // Tables of a scenario whose keys belong to the opponent as a driver, not to its robot's file.
    private static readonly string[] s_driver = ["heading", "throttle", "turn", "start", "ramp", "initial_speed"];

    // Tables that are of a scenario and of no robot.
    private static readonly string[] s_scene = ["floor", "shove", "contact", "tether", "numerics", "wall", "tyre_life", "measured"];

    // Tables whose blocks have names.
    private static readonly string[] s_named = ["tyre", "wheel", "motor", "drive", "controller"];

    /// <summary>The words.</summary>
    /// <param name="path">The path, as sweeps and draws name it.</param>
    /// <param name="robot">Name of the first robot.</param>
    /// <param name="opponent">Name of its opponent; null for none.</param>
    public static string Of(string path, string robot, string? opponent = null)
    {
        (string plain, string part) = path.Split(", ", 2) is [var p, var q] ? (p, $" ({q})") : (path, "");
        bool isOpponents = plain.StartsWith(Opponent, StringComparison.Ordinal);
        string owner = isOpponents ? opponent ?? "the opponent" : robot;
        string own = isOpponents ? plain[Opponent.Length..] : plain;
        if (isOpponents && s_driver.Contains(own))
        {
            return $"{KeyLabels.Of("opponent", own)} of {owner}{part}";
        }

        const string Driver = RenamedKeys.Table + ".";
        string driven = own.StartsWith("manoeuvre.", StringComparison.Ordinal) ? own["manoeuvre.".Length..] : own;
        if (driven.StartsWith(Driver, StringComparison.Ordinal))
        {
            return $"{KeyLabels.Of("manoeuvre.driver", driven[Driver.Length..])} of {owner}{part}";
        }

        int first = own.IndexOf('.', StringComparison.Ordinal);
        int last = own.LastIndexOf('.');
        if (first < 0)
        {
            return path;
        }

        string section = own[..first];
        string name = own[(last + 1)..];
        if (s_scene.Contains(section))
        {
            return KeyLabels.Of(own[..last], name) + (section == "floor" && name is "dust" or "slope_x" or "slope_y" ? " of the floor" : "") + part;
        }

        if (section == "manoeuvre")
        {
            return $"{KeyLabels.Of(section, name)} of {owner}{part}";
        }

        if (Array.IndexOf(s_named, section) < 0)
        {
            return $"{KeyLabels.Of(own[..last], name)} of {owner}{part}";
        }

        string block = last > first ? own[(first + 1)..last] : "";
        string label = KeyLabels.Of(section, name);
        return block is "" or "*" ? $"{label} of {owner}{(block == "*" ? $"'s {section}s" : "")}{part}" : $"{label} of {owner}'s {block}{(block.Contains(section, StringComparison.OrdinalIgnoreCase) ? "" : " " + section)}{part}";
    }
}
