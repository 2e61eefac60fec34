using PushSim.Analysis.Limits;

namespace PushSim.Words.Terms;

/// <summary>A robot in one line, and what of it cannot be meant.</summary>
public static class PlausibilityWords
{
    /// <summary>"mole: top speed about 2.0 m/s, pulls 11 N of its 13.3 N weight (tyres), first metre about 0.63 s, up to 10 A".</summary>
    public static string Line(Plausibility p) =>
        $"{p.Robot}{ThrottleWords.At(p.Throttle)}: top speed about {Of(p.TopSpeed)} m/s, {Pull(p)}, first metre {(p.FirstMetre is double t ? $"about {Of(t)} s" : "never")}, up to {Of(p.Current)} A";

    /// <summary>What of it cannot be meant, each a sentence that names the robot.</summary>
    public static IEnumerable<string> Warnings(Plausibility p) => p.Doubts.Select(d => $"{p.Robot}: {Of(d)}");

    /// <summary>A doubt as a sentence.</summary>
    public static string Of(Implausible doubt) => doubt switch
    {
        Implausible.Slow d => $"its top speed is {Of(d.Speed)} m/s, slower than any robot of this kind; check wheel diameters, gear ratios, and whether no_load_speed is that of the gearbox's shaft: then write output_speed",
        Implausible.Fast d => $"its top speed is {Of(d.Speed)} m/s, faster than any robot of this kind; check wheel diameters, motor speeds, and whether a gear ratio is missing",
        Implausible.Strong d => $"its motors give {Of(d.Motors)} N at the floor, {Of(d.Motors / d.Tyres)} times the {Of(d.Tyres)} N that its tyres hold; check torques, currents, gear ratios and frictions",
        Implausible.Weak d => $"its motors give {Of(d.Motors)} N at the floor, {Of(100.0 * d.Motors / d.Tyres)} % of the {Of(d.Tyres)} N that its tyres hold; check torques, currents, gear ratios and frictions",
        Implausible.Late { Time: double time } => $"it takes {Of(time)} s over its first metre; check motors, gear ratios and mass",
        Implausible.Late => "it never gets over its first metre; check motors, gear ratios, mass, skids and slope",
        Implausible.Hungry d => $"its battery gives up to {Of(d.Current)} A, more than packs and leads of such robots bear; check resistances, stall currents and current limits",
        _ => throw new ArgumentOutOfRangeException(nameof(doubt), doubt, "no words for this doubt"),
    };

    private static string Pull(Plausibility p)
    {
        string weight = PlainNumber.Of(p.Weight, 3);
        string by = p.Binding is BindingKind kind ? $" ({BindingTable.Words(kind)})" : "";
        return p.RearsUpAt is double tips ? $"rears up at {Of(tips)} N of its {weight} N weight" : p.Pull is double pull ? $"pulls {Of(Math.Max(0.0, pull))} N of its {weight} N weight{by}" : $"pull not found, weight {weight} N";
    }

    // Two digits, a last zero too: "2.0".
    private static string Of(double value)
    {
        double two = double.Parse(value.ToString("G2", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        int decimals = two > 0.0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(two)), 0, 6) : 0;
        return two.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
