namespace PushSim.Cli.Run;

/// <summary>Any number of a run's JSON document, by its name; numbers of tables inside it by "table.name".</summary>
internal static class AskedQuantity
{
    private static readonly string[] MoreIsBetter = ["pull_", "push_", "measured_pull_", "ground_", "margin_", "top_speed_", "yaw_rate_", "lowest_battery_voltage_"];

    /// <summary>How the name of a number ends: with its unit. A name without one holds a text, also where there is none to tell.</summary>
    private static readonly string[] Units = ["_n", "_m", "_s", "_rad", "_hz", "_j", "_a", "_v", "_w", "_degc", "_mm3", "_ratio", "_share"];

    /// <summary>What a sweep of this manoeuvre shows if nothing is asked.</summary>
    public static string Default(ManoeuvreKind kind) => kind switch
    {
        ManoeuvreKind.PullTest or ManoeuvreKind.DragTest => "pull_plateau_n",
        ManoeuvreKind.Shove => "ground_gained_m",
        ManoeuvreKind.WallPush => "push_plateau_n",
        ManoeuvreKind.Brake or ManoeuvreKind.Reversal => "stop_distance_m",
        ManoeuvreKind.Launch => "time_to_1_m_s",
        ManoeuvreKind.Spot => "yaw_rate_rad_per_s",
        ManoeuvreKind.Arc => "effective_track_ratio",
        _ => "travel_m",
    };

    /// <summary>Whether more of it is better, as most builders would say: force, speed, ground and what the battery still gives. Of time, way, current, heat, wear and loss less is; --best says otherwise.</summary>
    public static bool IsHighestBest(string key)
    {
        string name = key[(key.LastIndexOf('.') + 1)..];
        return MoreIsBetter.Any(start => name.StartsWith(start, StringComparison.Ordinal));
    }

    /// <summary>The names that can be asked of a run.</summary>
    public static IReadOnlyList<string> Names(RunResult result)
    {
        using JsonDocument document = JsonDocument.Parse(RunJson.Of(result, 0.0));
        return [.. Numbers(document.RootElement, "").Select(n => n.Key).Where(k => k != "schema_version")];
    }

    /// <summary>The quantities of a run; null where one does not apply.</summary>
    public static double?[] Of(RunResult result, double milliseconds, IReadOnlyList<string> keys)
    {
        using JsonDocument document = JsonDocument.Parse(RunJson.Of(result, milliseconds));
        Dictionary<string, double?> all = Numbers(document.RootElement, "").ToDictionary(n => n.Key, n => n.Value, StringComparer.Ordinal);
        return [.. keys.Select(k => all.GetValueOrDefault(k))];
    }

    private static IEnumerable<(string Key, double? Value)> Numbers(JsonElement table, string prefix)
    {
        foreach (JsonProperty p in table.EnumerateObject())
        {
            switch (p.Value.ValueKind)
            {
                case JsonValueKind.Number:
                    yield return (prefix + p.Name, p.Value.GetDouble());
                    break;
                case JsonValueKind.Null when Units.Any(unit => p.Name.EndsWith(unit, StringComparison.Ordinal)):
                    yield return (prefix + p.Name, null);
                    break;
                case JsonValueKind.Object:
                    foreach ((string key, double? value) in Numbers(p.Value, prefix + p.Name + "."))
                    {
                        yield return (key, value);
                    }

                    break;
            }
        }
    }
}
