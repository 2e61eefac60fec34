namespace PushSim.Words.Terms;

/// <summary>Words and script keys of what binds: one row a kind, in the order of <see cref="BindingKind"/>.</summary>
public static class BindingTable
{
    private static readonly Row[] s_rows =
    [
        new(BindingKind.Nothing, "idle", "nothing", "zero command", "nothing", "idle", ""),
        new(BindingKind.Tyre, "tyres", "sliding_tyre", "tyres", "sliding tyre", "tyres", "more grip, or more weight on the driven wheels; a stronger motor adds nothing"),
        new(BindingKind.CurrentLimit, "controllers", "current_limit", "controllers", "current limit", "controllers", "a higher current limit of the controllers, or more gear ratio"),
        new(BindingKind.Heat, "heat", "heat", "hot controllers", "heat", "heat", "controllers that stay cooler, or more gear ratio") { Part = BindingKind.CurrentLimit },
        new(BindingKind.Series, "series", "series_wiring", "series wiring", "series wiring", "series", "a wiring that lets each motor draw its own current") { Part = BindingKind.Tyre },
        new(BindingKind.Battery, "battery", "battery", "battery", "battery", "battery", "a battery that sags less, or more gear ratio"),
        new(BindingKind.Motor, "motors", "motor_voltage", "motors", "motor voltage", "motors", "more gear ratio or a stronger motor; more grip adds nothing"),
        new(BindingKind.Lifted, "lifted_wheels", "lifted", "lifted wheels", "lifted", "lifted", "all driven wheels on the floor: more load on those that lift") { Part = BindingKind.Tyre },
    ];

    /// <summary>Key of what binds a robot, for scripts.</summary>
    public static string Key(BindingKind kind) => s_rows[(int)kind].RobotKey;

    /// <summary>Key of what binds a wheel at a moment, for scripts.</summary>
    public static string WheelKey(BindingKind kind) => s_rows[(int)kind].WheelKey;

    /// <summary>Key of the part that binds a robot: scripts know tyres, controllers, battery and motors. A lifted wheel is lost traction. Null for none.</summary>
    public static string? PartKey(BindingKind? kind) => kind is null or BindingKind.Nothing ? null : Key(s_rows[(int)kind].Part ?? kind.Value);

    /// <summary>What binds a robot, in words that follow "its".</summary>
    public static string Words(BindingKind kind) => s_rows[(int)kind].RobotWords;

    /// <summary>What binds a wheel at a moment, in words.</summary>
    public static string WheelWords(BindingKind kind) => s_rows[(int)kind].WheelWords;

    /// <summary>The shortest word, for an axis.</summary>
    public static string Short(BindingKind kind) => s_rows[(int)kind].Short;

    /// <summary>What adds to a force that this kind holds back; empty where nothing does.</summary>
    /// <param name="kind">What binds most.</param>
    /// <param name="isAlone">Whether nothing else binds beside it; only then the rest adds nothing.</param>
    public static string Advice(BindingKind kind, bool isAlone)
    {
        string advice = s_rows[(int)kind].Advice;
        return isAlone || !advice.EndsWith(" adds nothing", StringComparison.Ordinal) ? advice : advice[..advice.LastIndexOf(';')];
    }

    /// <summary>What bound a robot, in words that follow "its": "motors, then tyres (with a wheel off the floor)".</summary>
    /// <param name="bound">What bound it.</param>
    /// <param name="leading">Other words for the kind that set most; null: its own.</param>
    public static string Phrase(BindingShares bound, string? leading = null)
    {
        string kinds = string.Join(", then ", bound.Named.Select((k, i) => i == 0 && leading is not null ? leading : Words(k)));
        return bound.IsLifted && bound.Leading != BindingKind.Lifted ? kinds + " (with a wheel off the floor)" : kinds;
    }

    /// <summary>The kind with that key of a robot; null if there is none.</summary>
    public static BindingKind? Parse(string key) => Array.Find(s_rows, r => r.RobotKey == key)?.Kind;

    private sealed record Row(BindingKind Kind, string RobotKey, string WheelKey, string RobotWords, string WheelWords, string Short, string Advice)
    {
        public BindingKind? Part { get; init; }
    }
}
