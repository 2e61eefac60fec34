using PushSim.Analysis.Season;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>Pictures of a season of pulls: friction of each tyre on each floor, and how it went from day to day.</summary>
public static class SeasonPlot
{
    // More lines over each other would not be told apart [1].
    private const int MostLines = 4;

    /// <summary>Both pictures.</summary>
    /// <param name="fit">The season.</param>
    /// <param name="isSliding">Whether it is of sliding forces.</param>
    public static PlotSheet Of(SeasonFit fit, bool isSliding) => new(() => [Bars(fit, isSliding), .. Days(fit, isSliding)]);

    private static Panel Bars(SeasonFit fit, bool isSliding)
    {
        SeasonGroup[] ranked = [.. fit.Groups.OrderByDescending(g => g.Friction.Value)];
        return new Panel("Friction by tyre and floor, most grip first; bars: 95 % intervals", "Tyre, floor", "Friction [1]")
            .AddBars([.. ranked.Select(g => (g.Friction.Value, g.Friction.Low, g.Friction.High))], isSliding ? "sliding (kinetic)" : "breakaway (static)", 0.0, 0)
            .WithNames([.. ranked.Select(g => g.State.Length == 0 ? g.Tyre : $"{g.Tyre}, {g.State}")]);
    }

    private static IEnumerable<Panel> Days(SeasonFit fit, bool isSliding)
    {
        SeasonGroup[] shown = [.. fit.Groups.Where(g => g.ByDay.Count > 1 && g.ByDay[0].Day > 0).OrderByDescending(g => g.ByDay.Count).ThenByDescending(g => g.Friction.Value)];
        if (shown.Length == 0)
        {
            yield break;
        }

        int first = shown.Min(g => g.ByDay[0].Day);
        string since = DateOnly.FromDayNumber(first).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        foreach (SeasonGroup[] few in shown.Chunk(MostLines).Take(3))
        {
            var panel = new Panel($"{(isSliding ? "Sliding friction" : "Friction as it lets go")} from day to day", $"Days since {since} [d]", "Friction [1]");
            foreach (SeasonGroup g in few)
            {
                panel.Add([.. g.ByDay.Select(d => (double)(d.Day - first))], [.. g.ByDay.Select(d => d.Friction)], g.State.Length == 0 ? g.Tyre : $"{g.Tyre}, {g.State}");
            }

            yield return panel;
        }
    }
}
