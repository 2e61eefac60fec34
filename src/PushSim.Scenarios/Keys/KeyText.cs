using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Keys;

/// <summary>The parts of a key's row in words, for explanations, the key reference and the schemas.</summary>
public static class KeyText
{
    // Numbers that read well without exponent.
    private const double LeastPlain = 0.01;
    private const double MostPlain = 1e5;

    // Families that builders never think of in SI: always in this unit.
    private static readonly Dictionary<Dimension, string> HomeUnits = new()
    {
        [Dimension.AngularSpeed] = "rpm",
        [Dimension.SpeedConstant] = "rpm/V",
        [Dimension.Angle] = "deg",
        [Dimension.Charge] = "mA h",
    };

    /// <summary>What a key takes, with the units of a quantity: "a mass: kg, g, mg, lb, oz".</summary>
    public static string Takes(KeyDefinition key) => key.Kind switch
    {
        KeyKind.Quantity => UnitTable.Words(key.Dimension) + UnitList(key.Dimension),
        KeyKind.Whole => "a whole number" + (key.CountWords.Count > 0 ? $", or a text such as \"3 {key.CountWords[^1]}\" or \"3{key.CountWords[0]}\"" : ""),
        KeyKind.Text => "a text",
        KeyKind.Flag => "true or false",
        KeyKind.Choice => "one of " + string.Join(", ", key.Choices.Select(c => $"\"{c}\"")),
        KeyKind.Texts => "a list of texts",
        KeyKind.Quantities => $"a list, each {UnitTable.Words(key.Dimension)}{UnitList(key.Dimension)}",
        KeyKind.Curve => $"a list of pairs: {UnitTable.Words(key.Dimension)} and {UnitTable.Words(key.SecondDimension)}",
        KeyKind.Table => "a table",
        KeyKind.Tables => "tables, one for each",
        KeyKind.Overrides => "a table of paths and their new values",
        _ => throw new ArgumentOutOfRangeException(nameof(key)),
    };

    /// <summary>The unit family of a quantity in a word or two ("mass"); empty for other kinds; of a curve, both.</summary>
    public static string UnitFamily(KeyDefinition key) => key.Kind switch
    {
        KeyKind.Quantity or KeyKind.Quantities => UnitTable.BareWords(key.Dimension),
        KeyKind.Curve => $"{UnitTable.BareWords(key.Dimension)}, {UnitTable.BareWords(key.SecondDimension)}",
        _ => "",
    };

    /// <summary>The names of the units that a quantity may carry; empty for other kinds.</summary>
    public static IReadOnlyList<string> UnitNames(KeyDefinition key) => key.Kind is KeyKind.Quantity or KeyKind.Quantities ? UnitTable.Names(key.Dimension) : [];

    /// <summary>Name of the SI unit of a quantity's bounds; empty for a pure number and for other kinds.</summary>
    public static string SiUnit(KeyDefinition key) => key.Kind is KeyKind.Quantity or KeyKind.Quantities ? UnitTable.SiName(key.Dimension) : "";

    /// <summary>The allowed range in readable units; empty if there is none.</summary>
    public static string Allowed(KeyDefinition key) => Range(key, key.Min, key.Max);

    /// <summary>The usual range in readable units; empty if there is none.</summary>
    public static string Usual(KeyDefinition key) => Range(key, key.UsualMin, key.UsualMax);

    /// <summary>What holds when the key is left out: "required" or the default in words.</summary>
    public static string Default(KeyDefinition key) => key.IsRequired ? "required" : key.Default.Length > 0 ? key.Default : "none";

    /// <summary>A line as a file would have it.</summary>
    public static string Example(KeyDefinition key, KeySection section) => key.Kind switch
    {
        KeyKind.Table or KeyKind.Tables => section.Inner(key).Header,
        KeyKind.Overrides => $"{key.Name} = {{ {key.Example} }}",
        _ => $"{key.Name} = {key.Example}",
    };

    /// <summary>A value and a range in SI, as complaints show them: in the unit of the trade if that is another, else in the SI unit where that needs no long row of noughts, else each in a readable unit.</summary>
    internal static (string Value, string Min, string Max) InMessage(KeyDefinition key, double value, double min, double max)
    {
        bool isPlain = !HomeUnits.ContainsKey(key.Dimension) && new[] { value, min, max }.All(v => v == 0.0 || Math.Abs(v) is >= LeastPlain and < MostPlain);
        string unit = isPlain && key.Kind != KeyKind.Whole && key.Dimension != Dimension.Ratio ? " " + UnitTable.SiName(key.Dimension) : "";
        return isPlain ? (Number(value) + unit, Number(min) + unit, Number(max) + unit) : (Bound(key, value), Bound(key, min), Bound(key, max));
    }

    private static string Range(KeyDefinition key, double min, double max) =>
        double.IsInfinity(min) && double.IsInfinity(max) ? "" : $"{Bound(key, min)} to {Bound(key, max)}";

    private static string Bound(KeyDefinition key, double si)
    {
        if (key.Kind == KeyKind.Whole)
        {
            return si.ToString("0", CultureInfo.InvariantCulture);
        }

        if (key.Dimension == Dimension.Ratio)
        {
            return Number(si);
        }

        Unit unit = ReadableUnit(key.Dimension, si);
        return $"{Number((si - unit.Offset) / unit.Factor)} {unit.Name}";
    }

    // Of the units that differ from SI by a power of ten, the first that makes a number from 1 to 999, else the one that makes the smallest from 1 on.
    private static Unit ReadableUnit(Dimension dimension, double si)
    {
        UnitTable.TryFind(dimension, HomeUnits.GetValueOrDefault(dimension, UnitTable.SiName(dimension)), out Unit best);
        if (HomeUnits.ContainsKey(dimension) || si == 0.0)
        {
            return best;
        }

        double least = double.PositiveInfinity;
        foreach (string name in UnitTable.Names(dimension))
        {
            UnitTable.TryFind(dimension, name, out Unit unit);
            double digits = Math.Log10(unit.Factor);
            double number = Math.Abs(si / unit.Factor) * (1.0 + 1e-12);
            bool isDecimal = unit.Offset == 0.0 && Math.Abs(digits - Math.Round(digits)) < 1e-9;
            if (isDecimal && number >= 1.0 && number < least)
            {
                (best, least) = (unit, number);
            }

            if (least < 1000.0)
            {
                break;
            }
        }

        return best;
    }

    private static string Number(double value)
    {
        double magnitude = Math.Abs(value);
        bool isPlain = magnitude == 0.0 || magnitude is >= 1e-4 and < 1e10;
        double rounded = double.Parse(value.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return isPlain ? rounded.ToString("0.########", CultureInfo.InvariantCulture) : value.ToString("0.###e0", CultureInfo.InvariantCulture);
    }

    private static string UnitList(Dimension dimension) => dimension == Dimension.Ratio ? "" : ": " + string.Join(", ", UnitTable.Names(dimension));
}
