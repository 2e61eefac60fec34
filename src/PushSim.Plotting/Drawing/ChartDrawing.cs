using System.Text;

namespace PushSim.Plotting.Drawing;

/// <summary>A chart of a picture: drawn anew for each look it is shown in.</summary>
/// <param name="Title">Its title; a page prints it as a heading.</param>
/// <param name="Words">Its content in words, for those who cannot see it.</param>
/// <param name="Height">Height [px].</param>
/// <param name="Draw">Draws it for a look, once for each.</param>
/// <param name="IsOverTime">Whether its horizontal axis is time, which a replay points at.</param>
internal sealed record ChartDrawing(string Title, string Words, int Height, Func<PlotLook, PlotModel> Draw, bool IsOverTime = false)
{
    // Curves described one by one in the words for a screen reader [1].
    private const int MostCurves = 8;

    /// <summary>The charts of panels.</summary>
    /// <param name="make">Makes the panels anew: each is built once, so each look takes its own.</param>
    public static ChartDrawing[] Of(Func<IReadOnlyList<Panel>> make)
    {
        IReadOnlyList<Panel> first = make();
        Dictionary<PlotLook, IReadOnlyList<Panel>> taken = [];
        return [.. first.Select((p, i) => new ChartDrawing(p.Title, InWords(p), PlotSheet.Height(p.Rows), look => Of(look)[i].Build(look), p.IsOverTime))];

        IReadOnlyList<Panel> Of(PlotLook look)
        {
            if (!taken.TryGetValue(look, out IReadOnlyList<Panel>? own))
            {
                taken.Add(look, own = taken.Count == 0 ? first : make());
            }

            return own;
        }
    }

    private static string InWords(Panel panel)
    {
        var words = new StringBuilder();
        words.Append(CultureInfo.InvariantCulture, $"Plot: {panel.Title}; {(panel.YTitle.Length > 0 ? panel.YTitle : "words")} against {panel.XTitle}.");
        foreach (Curve curve in panel.Curves.Take(MostCurves))
        {
            words.Append(CultureInfo.InvariantCulture, $" {curve.Label}: from {curve.Y.Min():0.##} to {curve.Y.Max():0.##}, at the end {curve.Y[^1]:0.##}.");
        }

        return words.ToString();
    }
}

