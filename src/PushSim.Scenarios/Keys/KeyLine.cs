using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Keys;

/// <summary>Writes values as lines of a file, each in its key's unit.</summary>
public static class KeyLine
{
    /// <summary>The line that gives a record's value; null if the record has none.</summary>
    /// <param name="key">The key; it must be one of that record.</param>
    /// <param name="record">The record.</param>
    /// <param name="digits">Significant digits, 1 to 15; the whole part is never rounded.</param>
    public static string? Of<T>(KeyDefinition key, T record, int digits) =>
        key.Row<T>()!.Get(record) is double value ? $"{key.Name} = {Quoted(key, Value(key, value, digits))}" : null;

    /// <summary>A value with its unit, as it stands between the quotes.</summary>
    /// <param name="key">The key.</param>
    /// <param name="value">The value, in SI; of a flag 0 or 1.</param>
    /// <param name="digits">Significant digits, 1 to 15; the whole part is never rounded.</param>
    public static string Value(KeyDefinition key, double value, int digits)
    {
        if (key.Kind == KeyKind.Flag)
        {
            return value != 0.0 ? "true" : "false";
        }

        Unit unit = key.Unit;
        return $"{Number((value - unit.Offset) / unit.Factor, digits)} {unit.Name}".TrimEnd();
    }

    /// <summary>A value as it stands behind the equals sign: with quotes if it has a unit.</summary>
    public static string Quoted(KeyDefinition key, string value) => key.Kind == KeyKind.Quantity && key.UnitName.Length > 0 ? $"\"{value}\"" : value;

    private static string Number(double value, int digits) =>
        Math.Abs(value) >= Math.Pow(10.0, digits - 1) ? value.ToString("0", CultureInfo.InvariantCulture) : PlainNumber.Of(value, digits);
}
