using System.Text.Encodings.Web;

namespace PushSim.Cli.Shared;

/// <summary>JSON documents for scripts: snake_case keys with the SI unit as last part.</summary>
internal static class CommandJson
{
    private const int SchemaVersion = 1;

    public static string Write(Action<Utf8JsonWriter> body)
    {
        using var stream = new MemoryStream();
        var options = new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var writer = new Utf8JsonWriter(stream, options))
        {
            writer.WriteStartObject();
            body(writer);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    public static void WriteHead(Utf8JsonWriter writer, string command, string verdict, IReadOnlyList<string> warnings)
    {
        writer.WriteNumber("schema_version", SchemaVersion);
        writer.WriteString("command", command);
        writer.WriteString("verdict", verdict);
        WriteTexts(writer, "warnings", warnings);

        // the whole command until its document is written: reading, computing, files
        WriteNumber(writer, "total_ms", CommandClock.Milliseconds);
    }

    public static void WriteNumber(Utf8JsonWriter writer, string key, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            writer.WriteNumber(key, number);
        }
        else
        {
            writer.WriteNull(key);
        }
    }

    /// <summary>A list of objects, each filled by <paramref name="body"/>.</summary>
    internal static void WriteRows<T>(Utf8JsonWriter writer, string key, IEnumerable<T> rows, Action<T> body)
    {
        writer.WriteStartArray(key);
        foreach (T row in rows)
        {
            writer.WriteStartObject();
            body(row);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    /// <summary>A list of texts; inside another list it has no key.</summary>
    public static void WriteTexts(Utf8JsonWriter writer, string? key, IEnumerable<string?> texts)
    {
        if (key is not null)
        {
            writer.WritePropertyName(key);
        }

        writer.WriteStartArray();
        foreach (string? text in texts)
        {
            writer.WriteStringValue(text);
        }

        writer.WriteEndArray();
    }

    /// <summary>A list of numbers; null where one is not finite.</summary>
    public static void WriteNumbers(Utf8JsonWriter writer, string key, IEnumerable<double> numbers)
    {
        writer.WritePropertyName(key);
        WriteNumbers(writer, numbers);
    }

    /// <summary>A list of rows of numbers.</summary>
    public static void WriteNumbers(Utf8JsonWriter writer, string key, IEnumerable<IEnumerable<double>> rows)
    {
        writer.WriteStartArray(key);
        foreach (IEnumerable<double> row in rows)
        {
            WriteNumbers(writer, row);
        }

        writer.WriteEndArray();
    }

    private static void WriteNumbers(Utf8JsonWriter writer, IEnumerable<double> numbers)
    {
        writer.WriteStartArray();
        foreach (double number in numbers)
        {
            if (double.IsFinite(number))
            {
                writer.WriteNumberValue(number);
            }
            else
            {
                writer.WriteNullValue();
            }
        }

        writer.WriteEndArray();
    }
}
