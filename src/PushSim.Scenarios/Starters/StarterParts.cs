using System.Text.RegularExpressions;
using PushSim.Scenarios.Shelf;

namespace PushSim.Scenarios.Starters;

/// <summary>The parts of the shelf that a person's words mean.</summary>
public static class StarterParts
{
    private const string DefaultTyre = "moulded natural rubber 60A";

    // Names that a refusal offers [1].
    private const int MostNear = 3;

    // Case of a motor of a robot of 1 to 2 kg [mm].
    private const double UsualCase = 25.0;

    /// <summary>The motor that words mean: a name, or the words of one class, whose gears for a brisk robot are then taken.</summary>
    /// <param name="words">Name or words of it; null takes the class usual for the mass.</param>
    /// <param name="mass">The whole robot [kg].</param>
    /// <param name="wheels">2, 4, 6 or 8 [1].</param>
    /// <param name="wrong">Why there is none; empty if there is one.</param>
    public static ShelfPart? MotorOf(string? words, double mass, int wheels, out string wrong)
    {
        IReadOnlyList<ShelfPart> found = Find(PartShelf.Motors, words ?? UsualMotor(mass));
        string[] classes = [.. found.Select(Class).Distinct(StringComparer.Ordinal)];
        wrong = classes.Length == 1 ? "" : Choice("motor", words ?? UsualMotor(mass), PartShelf.Motors, classes);
        return classes.Length == 1 ? found.MinBy(m => Math.Abs(Math.Log(StarterDesign.SpeedAtRatioOne(m, StarterDesign.DiameterOf(mass, wheels)) / (m.Find("gear_ratio")?.Value ?? 1.0) / StarterDesign.AimedSpeed))) : null;
    }

    /// <summary>The shelf's motor that comes nearest to what a shop tells: its class by case and voltage, its gears by the speed.</summary>
    /// <param name="shop">What the shop tells.</param>
    /// <param name="mass">The whole robot, for a case that is not said [kg].</param>
    public static ShelfPart MotorOf(ShopMotor shop, double mass)
    {
        ShelfPart usual = Find(PartShelf.Motors, UsualMotor(mass))[0];
        double size = shop.Case ?? CaseOf(usual) ?? 25.0;
        return PartShelf.Motors.Parts.Where(m => !m.Name.Contains("brushless", StringComparison.Ordinal) && CaseOf(m) is not null)
            .MinBy(m => (Math.Abs(Math.Log(CaseOf(m)!.Value / size)) * 100.0) + (Math.Abs(Math.Log((m.Find("voltage")?.Value ?? 12.0) / shop.VoltageOrUsual)) * 10.0) + Math.Abs(Math.Log(SpeedOf(m) / shop.Rpm)))!;
    }

    // output speed without load [rpm]
    private static double SpeedOf(ShelfPart m) =>
        StarterDesign.ConstantOf(m) * (m.Find("voltage")?.Value ?? 12.0) * 30.0 / Math.PI / (m.Find("gear_ratio")?.Value ?? 1.0);

    // diameter of the case, as its class names it [mm]
    private static double? CaseOf(ShelfPart m) => Regex.Match(m.Name, @"^(\d+) mm") is { Success: true } found ? double.Parse(found.Groups[1].Value, CultureInfo.InvariantCulture) : null;

    /// <summary>The tyre material that words mean: a name, words of one, or the one that shares most words with them.</summary>
    public static ShelfPart? TyreOf(string? words, out string wrong)
    {
        IReadOnlyList<ShelfPart> found = Find(PartShelf.Tyres, words ?? DefaultTyre);
        found = found.Count == 0 ? Alike(words!) : found;
        wrong = found.Count == 1 ? "" : Choice("tyre material", words ?? DefaultTyre, PartShelf.Tyres, [.. found.Select(p => p.Name)]);
        return found.Count == 1 ? found[0] : null;
    }

    // a name or alias, else one that holds the words in a row, else one that holds each of them; "25mm" and "25 mm" are the same
    private static IReadOnlyList<ShelfPart> Find(PartShelf shelf, string words)
    {
        if (shelf.Find(words) is ShelfPart part)
        {
            return [part];
        }

        ShelfPart[] whole = [.. shelf.Parts.Where(p => p.Names.Any(n => Holds(Packed(n), Packed(words))))];
        string[] each = Regex.Replace(words, @"(?<=\d) +(?=(mm|V)\b)", "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return whole.Length > 0 ? whole : [.. shelf.Parts.Where(p => p.Names.Any(n => each.All(w => Holds(Packed(n), w))))];
    }

    // those that share most words, hardness counted as a word: "shore 30A silicone" is cast silicone 30A
    private static ShelfPart[] Alike(string words)
    {
        string[] said = [.. Regex.Matches(words.ToLowerInvariant(), @"\d+ ?[ad]\b|[a-z]{3,}").Select(m => m.Value.Replace(" ", "", StringComparison.Ordinal)).Distinct()];
        (ShelfPart Part, int Shared)[] all = [.. PartShelf.Tyres.Parts.Select(p => (p, said.Count(w => p.Names.Any(n => Holds(Packed(n), w)))))];
        int most = all.Max(a => a.Shared);
        return most == 0 ? [] : [.. all.Where(a => a.Shared == most).Select(a => a.Part)];
    }

    // whether the name holds the words; a number in them is a whole one: "5 mm" is not in "25 mm"
    private static bool Holds(string name, string words)
    {
        for (int i = name.IndexOf(words, StringComparison.OrdinalIgnoreCase); i >= 0; i = name.IndexOf(words, i + 1, StringComparison.OrdinalIgnoreCase))
        {
            int end = i + words.Length;
            bool cutsInFront = i > 0 && char.IsDigit(name[i - 1]) && char.IsDigit(name[i]);
            bool cutsBehind = end > 0 && end < name.Length && char.IsDigit(name[end - 1]) && char.IsDigit(name[end]);
            if (!cutsInFront && !cutsBehind)
            {
                return true;
            }
        }

        return false;
    }

    private static string Packed(string text) => text.Replace(" ", "", StringComparison.Ordinal);

    private static string Choice(string one, string words, PartShelf shelf, IReadOnlyCollection<string> found) => found.Count == 0
        ? $"there is no {one} \"{words}\" on the shelf; {(shelf == PartShelf.Motors && words.Any(char.IsAsciiDigit) ? "nearest are" : "it has, among others,")} {string.Join("; ", Near(shelf, words))}"
        : $"\"{words}\" may be {string.Join("; ", found)}: say more of one name";

    // a few names to choose from: motors by the size of their case, that of a usual robot where none is said
    private static IEnumerable<string> Near(PartShelf shelf, string words)
    {
        if (shelf != PartShelf.Motors)
        {
            return shelf.Parts.Select(p => p.Name).Take(MostNear);
        }

        double size = Regex.Match(words, @"\d+(\.\d+)?") is { Success: true } said && double.Parse(said.Value, CultureInfo.InvariantCulture) is > 0.0 and double number ? number : UsualCase;
        return shelf.Parts.Where(m => CaseOf(m) is not null).OrderBy(m => Math.Abs(CaseOf(m)!.Value - size)).Select(Class).Distinct().Take(MostNear);
    }

    // the name without its gears
    private static string Class(ShelfPart motor) => motor.Name.EndsWith(":1", StringComparison.Ordinal) ? motor.Name[..motor.Name.LastIndexOf(", ", StringComparison.Ordinal)] : motor.Name;

    private static string UsualMotor(double mass) => mass switch
    {
        < 0.3 => "12 mm brushed gearmotor, 6 V",
        < 0.8 => "16 mm brushed gearmotor, 12 V",
        < 2.0 => "25 mm brushed gearmotor, 12 V",
        > 6.0 => "28 mm brushless motor with sensors",
        _ => "37 mm brushed gearmotor, 12 V",
    };
}
