using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>Names by which the parts of a robot refer to each other.</summary>
internal static class PartNames
{
    /// <summary>A part's name, if it has one and no other of its kind has it; null after a complaint.</summary>
    public static string? New(Section s, string kind, Func<string, bool> isTaken)
    {
        if (s.Text("name") is not string name)
        {
            return null;
        }

        if (isTaken(name))
        {
            s.Context.Error(s.PlaceOf("name"), $"there is already a {kind} \"{name}\"", "give each its own name");
            return null;
        }

        return name;
    }

    /// <summary>Complains about a name that no part of its kind has.</summary>
    public static void Unknown(ReadContext context, Place place, string kind, string name, IEnumerable<string> known)
    {
        List<string> names = [.. known];
        string all = names.Count == 0 ? $"there is no [[{kind}]] in this file" : $"known: {string.Join(", ", names)}";
        context.Error(place, $"there is no {kind} \"{SourceFile.Clean(name, 60)}\"", Section.DidYouMean(name, names) + all);
    }
}
