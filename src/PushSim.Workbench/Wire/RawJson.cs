using System.Text.Json;
using System.Text.Json.Serialization;

namespace PushSim.Workbench.Wire;

/// <summary>JSON that is written as it stands; null for none.</summary>
[JsonConverter(typeof(RawJsonConverter))]
internal readonly record struct RawJson(string? Text);

/// <summary>Writes it.</summary>
internal sealed class RawJsonConverter : JsonConverter<RawJson>
{
    public override RawJson Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using JsonDocument document = JsonDocument.ParseValue(ref reader);
        return new RawJson(document.RootElement.GetRawText());
    }

    public override void Write(Utf8JsonWriter writer, RawJson value, JsonSerializerOptions options)
    {
        if (value.Text is null)
        {
            writer.WriteNullValue();
        }
        else
        {
            writer.WriteRawValue(value.Text, skipInputValidation: true);
        }
    }
}
