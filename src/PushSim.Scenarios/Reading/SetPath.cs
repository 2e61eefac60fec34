using PushSim.Scenarios.Keys;

namespace PushSim.Scenarios.Reading;

/// <summary>Paths by which a caller sets values anew: "floor.friction", "tyre.soft.static_friction", "opponent.heading", "opponent.chassis.mass".</summary>
internal static class SetPath
{
    private const string Opponent = "opponent.";

    /// <summary>Whose value it is: "" for the scenario, "robot" or "opponent".</summary>
    public static string OwnerOf(string path)
    {
        if (path.StartsWith(Opponent, StringComparison.Ordinal))
        {
            return KeyTable.Find("opponent", Head(path[Opponent.Length..])) is null ? "opponent" : "";
        }

        return KeyTable.Find("scenario", Head(path)) is null ? "robot" : "";
    }

    /// <summary>The path inside the robot's file.</summary>
    public static string WithoutOwner(string path) => path.StartsWith(Opponent, StringComparison.Ordinal) ? path[Opponent.Length..] : path;

    private static string Head(string path) => path.Split('.')[0];
}
