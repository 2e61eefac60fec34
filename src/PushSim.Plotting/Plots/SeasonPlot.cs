using PushSim.Analysis.Season;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>Pictures of a season of pulls: friction of each tyre on each floor, and how it went from day to day.</summary>
public static class SeasonPlot
{
    // Tyres that have a picture each, and lines in one that can be told apart [1].
    private const int MostTyres = 6, MostStates = 4;

    // Room before the first and behind the last day, as a share of the days between [1].
    private const double Edge = 0.03;

    // Half-width of a normal 95 % interval in standard deviations [1].
    private const double Normal = 1.96;

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
        SeasonGroup[] shown = [.. fit.Groups.Where(g => g.ByDay.Count > 1 && g.ByDay[0].Day > 0)];
        if (shown.Length == 0)
        {
            yield break;
        }

        int first = shown.Min(g => g.ByDay[0].Day);
        double last = shown.Max(g => g.ByDay[^1].Day) - first;
        string since = DateOnly.FromDayNumber(first).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        foreach (IGrouping<string, SeasonGroup> tyre in shown.GroupBy(g => g.Tyre).OrderByDescending(t => t.Max(g => g.Friction.Value)).Take(MostTyres))
        {
            Panel panel = new Panel($"{tyre.Key}: {(isSliding ? "sliding friction" : "friction as it lets go")} from day to day", $"Days since {since} [d]", "Friction [1]").WithSpan(-Edge * last, (1.0 + Edge) * last);
            foreach (SeasonGroup g in tyre.Take(MostStates))
            {
                panel.Add([.. g.ByDay.Select(d => (double)(d.Day - first))], [.. g.ByDay.Select(d => d.Friction)], g.State.Length == 0 ? "all pulls" : g.State);
            }

            yield return panel.AddPieces([.. tyre.Take(MostStates).SelectMany(g => g.ByDay.SelectMany(d => Bar(d, fit, first)))], "95 % interval of a day's mean", Palette.Grey);
        }
    }

    private static IEnumerable<(double X, double Y)> Bar((int Day, double Friction, int Pulls) day, SeasonFit fit, int first)
    {
        double factor = Math.Exp(Normal * fit.Scatter / Math.Sqrt(day.Pulls));
        return [(day.Day - first, day.Friction / factor), (day.Day - first, day.Friction * factor), (day.Day - first, double.NaN)];
    }
}
