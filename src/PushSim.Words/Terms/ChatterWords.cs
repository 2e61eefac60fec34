namespace PushSim.Words.Terms;

/// <summary>Whether tyres chatter, in words: every answer that tells of it asks here.</summary>
public static class ChatterWords
{
    private const string None = "no chatter of its tyres is found";

    /// <summary>Key of a verdict for scripts.</summary>
    public static string Key(ChatterKind kind) => kind.ToString().ToLowerInvariant();

    /// <summary>Key of what feeds it for scripts; null where that is not known.</summary>
    public static string? Key(ChatterFeed feed) => feed switch
    {
        ChatterFeed.Friction => "falling_friction",
        ChatterFeed.Loads => "swinging_loads",
        ChatterFeed.Both or ChatterFeed.Either => "both",
        _ => null,
    };

    /// <summary>Key of a tyre's number, as in the robot file.</summary>
    public static string Key(ChatterPart part) => Row(part).Key;

    /// <summary>Unit of a tyre's number in SI.</summary>
    public static string Unit(ChatterPart part) => Row(part).Unit;

    /// <summary>The verdict as a cell of a column in hertz.</summary>
    public static string Cell(ChatterVerdict v) => v.Kind switch
    {
        ChatterKind.Buzzes => Text($"{v.Frequency:0}"),
        ChatterKind.Close => "close",
        ChatterKind.Quiet => "none",
        _ => "not known",
    };

    /// <summary>The verdict in a word or two, for a card.</summary>
    public static string Word(ChatterVerdict v) => v.Kind switch
    {
        ChatterKind.Buzzes => Text($"{v.Frequency:0} Hz"),
        ChatterKind.Close => "quiet, but close",
        ChatterKind.Quiet => "quiet",
        _ => "not known",
    };

    /// <summary>The verdict as the end of a sentence, "; its tyres chatter at about 31 Hz"; empty where there is nothing to say.</summary>
    /// <param name="v">The verdict.</param>
    /// <param name="effect">What else it does to the tyres.</param>
    public static string Clause(ChatterVerdict v, string effect = "") => v.Kind switch
    {
        ChatterKind.Buzzes when v.IsLatent => Text($"; quiet here, but small swings near {v.Frequency:0} Hz grow{Fed(v.Feed)}: expect chatter from the first bump{Cured(v)}"),
        ChatterKind.Buzzes => Text($"; its tyres chatter at about {v.Frequency:0} Hz{effect}{Fed(v.Feed)}{Cured(v)}"),
        ChatterKind.Close => $"; {None}, but they are close to chatter: {Of(v.Tip!)} would start it{Cured(v, "takes it further away")}",
        _ => "",
    };

    /// <summary>Further sentences of a verdict without what its answer tells of chatter.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="rest">The sentences behind it, of which one may be made of <see cref="Clause"/>.</param>
    /// <param name="v">The verdict.</param>
    public static string Behind(string answer, string rest, ChatterVerdict v)
    {
        if (v.Kind == ChatterKind.Close)
        {
            return rest.Replace($"{Phrase.Capital(None)}, but they are", "Its tyres are", StringComparison.Ordinal);
        }

        string told = Text($"Its tyres chatter at about {v.Frequency:0} Hz");
        int at = v is { Kind: ChatterKind.Buzzes, IsLatent: false } && answer.Contains(Text($" chatter at {v.Frequency:0} Hz"), StringComparison.Ordinal) ? rest.IndexOf(told, StringComparison.Ordinal) : -1;
        if (at < 0)
        {
            return rest;
        }

        // what is left of the sentence: an effect, and what feeds it
        int end = rest.IndexOf('.', at + told.Length);
        string fed = Fed(v.Feed);
        string effect = rest[(at + told.Length)..(end < 0 ? rest.Length : end)];
        effect = fed.Length > 0 ? effect.Replace(fed, "", StringComparison.Ordinal) : effect;
        string feed = fed.Length == 0 ? "" : Phrase.Capital(fed[", fed by ".Length..]) + (v.Feed is ChatterFeed.Friction ? " feeds the chatter." : " feed the chatter.");
        string left = $"{(effect.Length == 0 ? "" : "Its tyres" + effect[" and".Length..] + ". ")}{feed}";
        return (rest[..at] + left + (end < 0 ? "" : rest[(end + 1)..])).Trim();
    }

    /// <summary>What keeps the tyres of a robot quiet in a shove, in a sentence; empty where they are quiet or nothing does.</summary>
    /// <param name="v">The verdict.</param>
    /// <param name="name">Name of the robot.</param>
    public static string InShove(ChatterVerdict v, string name) =>
        v is { Kind: ChatterKind.Buzzes, Cure: not null } ? Text($"The tyres of {name} chatter at about {v.Frequency:0} Hz; {Of(v.Cure)} keeps them quiet.") : "";

    /// <summary>The verdict of a turn as sentences of an explanation.</summary>
    public static IEnumerable<string> Explanation(ChatterVerdict v)
    {
        if (v.Kind == ChatterKind.Unknown)
        {
            yield return $"Whether its tyres chatter cannot be said: {Of(v.Doubt, v.NoModes)}.";
        }
        else if (v.Kind == ChatterKind.Quiet)
        {
            yield return "Its tyres are quiet and not close to chatter: tyre bodies with two thirds of their damping, or a slip speed half as high again or two thirds as high, stay quiet, too.";
        }
        else if (v is { Cure: null, IsCureLeftOut: false })
        {
            yield return "No single change of the tyres that was tried makes it quiet: more damping of tyre body or vertical spring, a softer tread.";
        }
    }

    /// <summary>Why it cannot be said.</summary>
    public static string Of(ChatterDoubt doubt, NoModesCause noModes) => doubt switch
    {
        ChatterDoubt.None => "",
        ChatterDoubt.Material => "what the tyre is made of is not known",
        ChatterDoubt.Stopped => "the run did not come to its end",
        ChatterDoubt.TooShort => "the run has too few samples",
        _ => Of(noModes),
    };

    /// <summary>Why a turn has no modes; empty if it has.</summary>
    public static string Of(NoModesCause cause) => cause switch
    {
        NoModesCause.None => "",
        NoModesCause.CannotTurn => "it does not turn",
        NoModesCause.UnevenFloor => "the floor is not the same all around, so there is no steady turn",
        NoModesCause.HeldBack => "something holds the robot back, so there is no steady turn",
        NoModesCause.NoCommand => "nothing is commanded",
        NoModesCause.LeftOut => "it was left out of the closer look, which would have taken too much work",
        NoModesCause.NoStand => "the robot does not stand on its wheels",
        _ => "no steady turn was found",
    };

    /// <summary>A change, "tyre body damping of 1.20 N s/m instead of 0.50".</summary>
    public static string Of(ChatterChange c)
    {
        (_, string words, _, string unit, double scale) = Row(c.Part);
        return c.From is double from
            ? Text($"{words} of {Figure(scale * c.To!.Value, c.Factor > 1.0)} {unit} instead of {Figure(scale * from, null)}")
            : Text($"{words} {Figure(c.Factor, c.Factor > 1.0)} times what each tyre has");
    }

    private static string Fed(ChatterFeed feed) => feed switch
    {
        ChatterFeed.Friction => ", fed by falling friction",
        ChatterFeed.Loads => ", fed by swinging loads",
        ChatterFeed.Both or ChatterFeed.Either => ", fed by falling friction and swinging loads",
        _ => "",
    };

    private static string Cured(ChatterVerdict v, string effect = "keeps it quiet") => v.Cure is null ? "" : $"; {Of(v.Cure)} {effect}";

    // What just would not do is not told as enough: up for more, down for less.
    private static string Figure(double value, bool? up)
    {
        int digits = value >= 100.0 ? 0 : value >= 10.0 ? 1 : 2;
        double step = Math.Pow(10.0, -digits);
        double told = up is null ? value : up.Value ? step * Math.Ceiling(value / step) : step * Math.Floor(value / step);
        return told.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    // key and words, unit of the key, unit on the screen and how many of it make one of the key
    private static (string Key, string Words, string Unit, string Shown, double Scale) Row(ChatterPart part) => part switch
    {
        ChatterPart.BodyDamping => ("body_damping", "a tyre body damping", "N s/m", "N s/m", 1.0),
        ChatterPart.TreadGive => ("breakaway_deflection", "a softer tread with a breakaway deflection", "m", "mm", 1e3),
        ChatterPart.VerticalDamping => ("vertical_damping", "a vertical damping", "s/m", "s/m", 1.0),
        _ => ("slip_speed", "a slip speed", "m/s", "m/s", 1.0),
    };
}
