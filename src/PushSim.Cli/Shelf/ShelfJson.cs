using PushSim.Scenarios.Shelf;

namespace PushSim.Cli.Shelf;

/// <summary>Parts of the shelf as a JSON document.</summary>
internal static class ShelfJson
{
    public static void Write(Utf8JsonWriter writer, string verdict, IReadOnlyList<(PartShelf Shelf, IReadOnlyList<ShelfPart> Parts)> found)
    {
        CommandJson.WriteHead(writer, "shelf", verdict, []);
        foreach (PartShelf shelf in PartShelf.All)
        {
            CommandJson.WriteRows(writer, shelf.File, found.Where(f => f.Shelf == shelf).SelectMany(f => f.Parts), part => WritePart(writer, part));
        }
    }

    private static void WritePart(Utf8JsonWriter writer, ShelfPart part)
    {
        writer.WriteString("name", part.Name);
        writer.WriteString("about", part.About);
        CommandJson.WriteTexts(writer, "aliases", part.Aliases);
        CommandJson.WriteRows(writer, "values", part.Numbers, n =>
        {
            writer.WriteString("key", n.Key);
            writer.WriteString("text", n.Text);
            writer.WriteString("unit", n.Unit);
            if (n.Value is double value)
            {
                writer.WriteNumber("value", value);
                writer.WriteNumber("tolerance", n.Tolerance);
            }
            else
            {
                writer.WriteNull("value");
                writer.WriteNull("tolerance");
            }

            writer.WriteString("origin", n.Origin switch { ShelfOrigin.Source => "source", ShelfOrigin.CommonPractice => "common practice, no source", _ => "estimate" });
            writer.WriteString("source", n.Source);
        });
    }
}
