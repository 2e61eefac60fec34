using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Robots;

/// <summary>Swaps a tyre's material for one of the shelf, sizes and places kept; see <see cref="ReadOptions.TyreMaterial"/>.</summary>
internal static class TyreSwap
{
    // Assumed where a robot's own tyres have no cover to copy [as a file writes it].
    private const string UsualWidth = "20 mm";
    private const string UsualThickness = "6 mm";

    // What a swap leaves as it is: sizes and places, not the stuff.
    private static readonly string[] Sizes = ["name", "width", "tread_thickness", "hub_stiffness", "reference_load"];

    /// <summary>The tyre's table with its sizes alone, naming the material; the shelf's values are still to be filled in.</summary>
    /// <param name="context">Takes notes of what is assumed.</param>
    /// <param name="tyre">The tyre's table, left as it is.</param>
    /// <param name="label">What paths and notes call the tyre.</param>
    /// <param name="material">Name of the material on the shelf, known or not.</param>
    public static TomlTable Of(ReadContext context, TomlTable tyre, string label, string material)
    {
        var swapped = new TomlTable(tyre.Place, isExplicit: true);
        foreach (TomlEntry entry in tyre.Entries.Where(e => Sizes.Contains(e.Key)))
        {
            swapped.Add(entry);
        }

        swapped.Add(new TomlEntry(ShelfFill.Key, tyre.Place, new TomlText(tyre.Place, material)));
        Assume("width", UsualWidth);
        Assume("tread_thickness", UsualThickness);
        return swapped;

        void Assume(string key, string value)
        {
            if (swapped.Find(key) is null && context.Overrides?.Find($"tyre.{label}.{key}") is null)
            {
                swapped.Add(new TomlEntry(key, tyre.Place, new TomlText(tyre.Place, value)));
                context.Notes.Add($"tyre \"{label}\": {key} {value} assumed, the file gives none");
            }
        }
    }
}
