using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using PushSim.Analysis.Chance;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>The picture of many matches: how far the contact moved, coloured by who won, and which inputs matter most.</summary>
public static class OddsPlot
{
    // Columns of matches, and inputs shown [1].
    private const int Bins = 40;
    private const int MostInputs = 8;

    private const string InputsTitle = "What matters most by itself";
    // Letters of a name with "wins by tilt or lift" behind it that fit into a telephone's legend [1].
    private const int LongestName = 24;

    // Room for the names of inputs [px].
    private const double NameWidth = 330.0;

    /// <summary>The picture.</summary>
    /// <param name="label">Label of the design.</param>
    /// <param name="robot">Name of the first robot.</param>
    /// <param name="opponent">Name of the opponent.</param>
    /// <param name="outcomes">The matches; at least one that did not fail.</param>
    /// <param name="inputs">Inputs and their share of the variance [1], largest first; may be empty.</param>
    /// <param name="others">The matches of other designs, each with its label and its robots, whose curves stand over its own; empty for none.</param>
    public static PlotSheet Of(
        string label, string robot, string opponent, IReadOnlyList<MatchEnd> outcomes, IReadOnlyList<(string Name, double Share)> inputs,
        IReadOnlyList<(string Label, string Robot, string Opponent, IReadOnlyList<MatchEnd> Outcomes)> others) =>
        new(
        [
            .. Compared([(label, robot, outcomes), .. others.Select(o => (o.Label, o.Robot, o.Outcomes))]), Ground(robot, opponent, outcomes), .. Mattering(inputs),
        ]);

    // How much of the matches ends at least so far ahead, a curve a design: where a curve lies higher, that design is better off
    private static IEnumerable<ChartDrawing> Compared(IReadOnlyList<(string Label, string Robot, IReadOnlyList<MatchEnd> Outcomes)> designs)
    {
        (string Label, double[] Ground)[] shown =
        [
            .. designs.Where(d => d.Outcomes.Any(m => !m.HasFailed)).Select(d => (PlainLabel.Of(d.Label, LongestName), d.Outcomes.Where(m => !m.HasFailed).Select(m => m.GroundGained).Order().ToArray())),
        ];
        if (shown.Length < 2)
        {
            return [];
        }

        string whose = designs.Select(d => d.Robot).Distinct().Count() == 1 ? designs[0].Robot : "the first robot";
        string title = $"Matches in which {whose} gains more ground than that";
        string words = string.Join("; ", shown.Select(d => FormattableString.Invariant($"{d.Label}: half of the matches above {d.Ground[d.Ground.Length / 2]:0.000} m")));
        return [new ChartDrawing(title, $"Plot: {title}; {words}.", 380, look => Shares(look, title, shown))];
    }

    private static PlotModel Shares(PlotLook look, string title, (string Label, double[] Ground)[] designs)
    {
        PlotModel model = Chart.Model(look, title);
        model.Axes.Add(Chart.Axis(AxisPosition.Bottom, "Ground gained [m]"));
        LinearAxis share = Chart.Axis(AxisPosition.Left, "Matches above [%]");
        (share.Minimum, share.Maximum) = (0.0, 105.0);
        model.Axes.Add(share);
        for (int i = 0; i < designs.Length; i++)
        {
            double[] ground = designs[i].Ground;
            var curve = new StairStepSeries { Title = designs[i].Label, Color = Palette.Colour(i), LineStyle = Palette.Dash(i), StrokeThickness = Palette.Width(i) };
            curve.Points.Add(new DataPoint(ground[0], 100.0));
            curve.Points.AddRange(ground.Select((g, k) => new DataPoint(g, 100.0 * (ground.Length - 1 - k) / ground.Length)));
            model.Series.Add(curve);
        }

        return model;
    }

    private static ChartDrawing Ground(string robot, string opponent, IReadOnlyList<MatchEnd> outcomes)
    {
        MatchEnd[] good = [.. outcomes.Where(o => !o.HasFailed)];
        string title = $"Ground gained by {robot} in {good.Length} matches";
        return new(
            title,
            FormattableString.Invariant($"Plot: {title}, from {good.Min(o => o.GroundGained):0.000} to {good.Max(o => o.GroundGained):0.000} m; {robot} wins {good.Count(o => o.Winner == 0)}, {opponent} wins {good.Count(o => o.Winner == 1)}, {good.Count(o => o.Winner < 0)} stalemates."),
            380,
            look => Distribution(look, title, robot, opponent, good));
    }

    private static List<ChartDrawing> Mattering(IReadOnlyList<(string Name, double Share)> inputs)
    {
        List<ChartDrawing> charts = [];
        (string Name, double Share)[] shown = [.. inputs.Take(MostInputs).Reverse()];
        if (shown.Length > 0)
        {
            string words = string.Join(", ", shown.Reverse().Select(i => FormattableString.Invariant($"{i.Name} {100.0 * i.Share:0} %")));
            charts.Add(new ChartDrawing(InputsTitle, $"Plot: share of the ground's variance: {words}.", 110 + (34 * shown.Length), look => Inputs(look, shown)));
        }

        return charts;
    }

    // A win over a robot that is tilted or lifted says nothing of the ground: such a loser may have gained some.
    private static Kind[] Kinds(string robot, string opponent) =>
    [
        new($"{opponent} wins", 1, 150, 1.4, o => o.Winner == 1 && o.Ending != ShoveEnding.Tips),
        new($"{PlainLabel.Of(opponent, LongestName)} wins by tilt or lift", 1, 50, 1.4, o => o.Winner == 1 && o.Ending == ShoveEnding.Tips),
        new("stalemate", 7, 90, 0.5, o => o.Winner < 0),
        new($"{PlainLabel.Of(robot, LongestName)} wins by tilt or lift", 0, 80, 0.5, o => o.Winner == 0 && o.Ending == ShoveEnding.Tips),
        new($"{robot} wins", 0, 255, 0.5, o => o.Winner == 0 && o.Ending != ShoveEnding.Tips),
    ];

    internal static PlotModel Distribution(PlotLook look, string title, string robot, string opponent, MatchEnd[] good)
    {
        double most = Math.Max(0.02, good.Max(o => Math.Abs(o.GroundGained)));
        double width = 2.0 * most / Bins;
        PlotModel model = Chart.Model(look, title);
        model.Axes.Add(Chart.Axis(AxisPosition.Bottom, "Ground gained [m]"));
        LinearAxis count = Chart.Axis(AxisPosition.Left, "Matches");
        count.Minimum = 0.0;
        count.MaximumPadding = 0.08;
        model.Axes.Add(count);
        double[] below = new double[Bins];
        foreach (Kind kind in Kinds(robot, opponent))
        {
            var series = new RectangleBarSeries { Title = kind.Label, FillColor = OxyColor.FromAColor(kind.Alpha, Palette.Colour(kind.Shade)), StrokeColor = OxyColors.Black, StrokeThickness = kind.Stroke };
            foreach (IGrouping<int, MatchEnd> bin in good.Where(kind.Has).GroupBy(o => Math.Clamp((int)((o.GroundGained + most) / width), 0, Bins - 1)))
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

    private static PlotModel Inputs(PlotLook look, (string Name, double Share)[] inputs)
    {
        PlotModel model = Chart.Model(look, InputsTitle, NameWidth);
        LinearAxis share = Chart.Axis(AxisPosition.Bottom, "Share of the ground's variance [%]");
        share.Minimum = 0.0;
        share.Maximum = Math.Max(10.0, 115.0 * inputs.Max(i => i.Share));
        model.Axes.Add(share);
        model.Axes.Add(Chart.WordAxis(look, AxisPosition.Left, "", [.. inputs.Select(i => i.Name)], NameWidth));
        for (int i = 0; i < inputs.Length; i++)
        {
            double percent = 100.0 * inputs[i].Share;
            RectangleAnnotation bar = Chart.Box(0.0, percent, i - 0.34, i + 0.34, OxyColor.FromAColor(150, Palette.Colour(0)));
            (bar.Stroke, bar.StrokeThickness) = (Palette.Colour(0), 1.0);
            TextAnnotation words = Chart.Words(FormattableString.Invariant($"{percent:0} %"), percent, i, HorizontalAlignment.Left);
            words.Offset = new ScreenVector(6, 0);
            model.Annotations.Add(bar);
            model.Annotations.Add(words);
        }

        return model;
    }

    private sealed record Kind(string Label, int Shade, byte Alpha, double Stroke, Func<MatchEnd, bool> Has);
}
