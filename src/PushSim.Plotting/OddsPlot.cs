using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;
using PushSim.Analysis.Chance;

namespace PushSim.Plotting;

/// <summary>The picture of many matches: how far the contact moved, coloured by who won, and which inputs matter most.</summary>
public static class OddsPlot
{
    private const int Bins = 40;
    private const int MostInputs = 8;

    /// <summary>The picture.</summary>
    /// <param name="robot">Name of the first robot.</param>
    /// <param name="opponent">Name of the opponent.</param>
    /// <param name="outcomes">The matches; at least one that did not fail.</param>
    /// <param name="inputs">Inputs and their share of the variance [1], largest first; may be empty.</param>
    public static PlotSheet Of(string robot, string opponent, IReadOnlyList<MatchEnd> outcomes, IReadOnlyList<(string Name, double Share)> inputs)
    {
        List<(PlotModel, int)> panels = [(Distribution(robot, opponent, outcomes), 380)];
        (string Name, double Share)[] shown = [.. inputs.Take(MostInputs).Reverse()];
        if (shown.Length > 0)
        {
            panels.Add((Inputs(shown), 110 + (28 * shown.Length)));
        }

        return new PlotSheet(panels);
    }

    private static PlotModel Distribution(string robot, string opponent, IReadOnlyList<MatchEnd> outcomes)
    {
        MatchEnd[] good = [.. outcomes.Where(o => !o.HasFailed)];
        double most = Math.Max(0.02, good.Max(o => Math.Abs(o.GroundGained)));
        double width = 2.0 * most / Bins;
        PlotModel model = Chart.Model($"Ground gained by {robot} in {good.Length} matches");
        model.Axes.Add(Chart.Axis(AxisPosition.Bottom, "Ground gained [m]"));
        LinearAxis count = Chart.Axis(AxisPosition.Left, "Matches");
        count.Minimum = 0.0;
        count.MaximumPadding = 0.08;
        model.Axes.Add(count);
        double[] below = new double[Bins];
        (string Label, int Winner, int Look)[] kinds = [($"{opponent} wins", 1, 1), ("stalemate", -1, 7), ($"{robot} wins", 0, 0)];
        foreach ((string label, int winner, int look) in kinds)
        {
            var series = new RectangleBarSeries
            {
                Title = label,
                FillColor = OxyColor.FromAColor(winner == 0 ? (byte)255 : winner == 1 ? (byte)150 : (byte)90, Palette.Colour(look)),
                StrokeColor = OxyColors.Black,
                StrokeThickness = winner == 1 ? 1.4 : 0.5,
            };
            foreach (IGrouping<int, MatchEnd> bin in good.Where(o => o.Winner == winner).GroupBy(o => Math.Clamp((int)((o.GroundGained + most) / width), 0, Bins - 1)))
            {
                double left = (bin.Key * width) - most;
                series.Items.Add(new RectangleBarItem(left, below[bin.Key], left + width, below[bin.Key] + bin.Count()));
                below[bin.Key] += bin.Count();
            }

            if (series.Items.Count > 0)
            {
                model.Series.Add(series);
            }
        }

        return model;
    }

    private static PlotModel Inputs((string Name, double Share)[] inputs)
    {
        PlotModel model = Chart.Model("What matters most", left: 330);
        LinearAxis share = Chart.Axis(AxisPosition.Bottom, "Share of the ground's variance [%]");
        share.Minimum = 0.0;
        share.Maximum = Math.Max(10.0, 115.0 * inputs.Max(i => i.Share));
        model.Axes.Add(share);
        model.Axes.Add(Chart.WordAxis(AxisPosition.Left, "", [.. inputs.Select(i => i.Name)]));
        Chart.AddBars(model, [.. inputs.Select(i => 100.0 * i.Share)], [.. inputs.Select(i => FormattableString.Invariant($"{100.0 * i.Share:0} %"))]);
        return model;
    }
}
