using PushSim.Scenarios.Notebook;

namespace PushSim.Cli.Garage;

/// <summary>A garage as a JSON document.</summary>
internal static class GarageJson
{
    public static string Of(GarageContents g) => CommandJson.Write(writer =>
    {
        CommandJson.WriteHead(writer, "garage", GarageText.Verdict(g), [.. g.Problems.Select(p => p.ToString()), .. g.Notebook?.Notes ?? []]);
        writer.WriteString("name", g.Name);
        writer.WriteString("folder", g.Folder.Path);
        foreach ((string key, IReadOnlyList<GarageItem> items) in new[] { ("robots", g.Robots), ("tyres", g.Tyres), ("opponents", g.Rivals), ("floors", g.Floors) })
        {
            CommandJson.WriteRows(writer, key, items, item =>
            {
                writer.WriteString("name", item.Name);
                writer.WriteString("about", item.About);
                writer.WriteBoolean("usable", !item.IsUnusable);
                CommandJson.WriteTexts(writer, "lacks", item.Lacks);
                if (item.Pulls is int pulls)
                {
                    writer.WriteNumber("pulls", pulls);
                }
            });
        }

        writer.WriteStartObject("readings");
        IReadOnlyList<PullRow> rows = g.Notebook?.Rows ?? [];
        writer.WriteNumber("rows", rows.Count);
        writer.WriteNumber("counted", rows.Count(r => r.IsCounted));
        writer.WriteString("last", rows.Max(r => r.When) is { } last ? last.ToString("s", CultureInfo.InvariantCulture) : null);
        writer.WriteEndObject();
    });
}
