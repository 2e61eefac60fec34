using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using PushSim.Analysis.Chance;
using PushSim.Plotting.Drawing;
using PushSim.Words.Matches;

namespace PushSim.Plotting.Plots;

/// <summary>The picture of many matches: how far the contact moved, coloured by who won, and which inputs matter most.</summary>
public static class OddsPlot
{
    // Columns of matches [1].
    private const int Bins = 40;

    // Steps of a curve over the ground: as fine as a picture shows [1].
    private const int Steps = 400;

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
    /// <param name="inputs">Which inputs matter by themselves, named in plain words; there may be none.</param>
    /// <param name="others">The matches of other designs, each with its label and its robots, whose curves stand over its own; empty for none.</param>
    public static PlotSheet Of(
        string label, string robot, string opponent, IEnumerable<MatchEnd> outcomes, InputShares inputs,
        IReadOnlyList<(string Label, string Robot, string Opponent, IEnumerable<MatchEnd> Outcomes)> others) =>
        new(
        [
            .. Compared([(label, robot, outcomes), .. others.Select(o => (o.Label, o.Robot, o.Outcomes))]), Ground(robot, opponent, outcomes), .. Mattering(inputs),
        ]);

    // How much of the matches ends at least so far ahead, a curve a design: where a curve lies higher, that design is better off
    private static IEnumerable<ChartDrawing> Compared(IReadOnlyList<(string Label, string Robot, IEnumerable<MatchEnd> Outcomes)> designs)
    {
        (string Label, DataPoint[] Curve)[] shown = designs.Count < 2 ? [] : [.. designs.Select(d => (PlainLabel.Of(d.Label, LongestName), Above(d.Outcomes))).Where(d => d.Item2.Length > 0)];
        if (shown.Length < 2)
        {
            return [];
        }

        string whose = designs.Select(d => d.Robot).Distinct().Count() == 1 ? designs[0].Robot : "the first robot";
        string title = $"Matches in which {whose} gains more ground than that";
        string words = string.Join("; ", shown.Select(d => FormattableString.Invariant($"{d.Label}: half of the matches above {d.Curve.Last(p => p.Y >= 50.0).X:0.000} m")));
        return [new ChartDrawing(title, $"Plot: {title}; {words}.", 380, look => Shares(look, title, shown))];
    }

    // Counted, not sorted: there may be too many matches to keep
    private static DataPoint[] Above(IEnumerable<MatchEnd> outcomes)
    {
        long all = 0;
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        foreach (MatchEnd end in outcomes.Where(o => !o.HasFailed))
        {
            all++;
            (low, high) = (Math.Min(low, end.GroundGained), Math.Max(high, end.GroundGained));
        }

        if (all == 0)
        {
            return [];
        }

        long[] counts = new long[Steps];
        double width = Math.Max(1e-9, high - low) / Steps;
        foreach (MatchEnd end in outcomes.Where(o => !o.HasFailed))
        {
            counts[Math.Clamp((int)((end.GroundGained - low) / width), 0, Steps - 1)]++;
        }

        var curve = new DataPoint[Steps + 1];
        curve[0] = new DataPoint(low, 100.0);
        long above = all;
        for (int i = 0; i < Steps; i++)
        {
            above -= counts[i];
            curve[i + 1] = new DataPoint(low + ((i + 1) * width), 100.0 * above / all);
        }

        return curve;
    }

    private static PlotModel Shares(PlotLook look, string title, (string Label, DataPoint[] Curve)[] designs)
    {
        PlotModel model = Chart.Model(look, title);
        model.Axes.Add(Chart.Axis(AxisPosition.Bottom, "Ground gained [m]"));
        LinearAxis share = Chart.Axis(AxisPosition.Left, "Matches above [%]");
        (share.Minimum, share.Maximum) = (0.0, 105.0);
        model.Axes.Add(share);
        for (int i = 0; i < designs.Length; i++)
        {
            var curve = new LineSeries { Title = designs[i].Label, Color = Palette.Line(i), LineStyle = Palette.Dash(i), StrokeThickness = Palette.Width(i) };
            curve.Points.AddRange(designs[i].Curve);
            model.Series.Add(curve);
        }

        return model;
    }

    private static ChartDrawing Ground(string robot, string opponent, IEnumerable<MatchEnd> outcomes)
    {
        // counted once for all pictures: there may be too many matches to keep
        var tally = new Tally();
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        foreach (MatchEnd end in outcomes.Where(o => !o.HasFailed))
        {
            tally.Add(end);
            (low, high) = (Math.Min(low, end.GroundGained), Math.Max(high, end.GroundGained));
        }

        string title = $"Ground gained by {robot} in {tally.Matches} matches";
        Lazy<Columns> columns = new(() => Columns.Of(outcomes, Math.Max(0.02, Math.Max(-low, high)), Kinds(robot, opponent)));
        return new(
            title,
            FormattableString.Invariant($"Plot: {title}, from {low:0.000} to {high:0.000} m; {robot} wins {tally.Wins}, {opponent} wins {tally.Losses}, {tally.Stalemates} stalemates."),
            380,
            look => Distribution(look, title, columns.Value));
    }

    private static ChartDrawing[] Mattering(InputShares inputs)
    {
        if (inputs.Told.Count == 0)
        {
            return [];
        }

        InputShare[] shown = [new(OddsWords.Rest, inputs.Rest), .. inputs.Told.Reverse()];
        string words = string.Join(", ", shown.Reverse().Select(i => FormattableString.Invariant($"{i.Name} {100.0 * i.Share.Value:0} % ({100.0 * i.Share.Low:0} to {100.0 * i.Share.High:0} %)")));
        return [new ChartDrawing(InputsTitle, $"Plot: share of the ground's variance, with 95 % intervals: {words}.", 130 + (34 * shown.Length), look => Inputs(look, shown))];
    }

    // A win over a robot that is tilted or lifted says nothing of the ground: such a loser may have gained some.
    private static Kind[] Kinds(string robot, string opponent) =>
    [
        new($"{opponent} wins", Palette.Robot(1), 150, 1.4, o => o.Winner == 1 && o.Ending != ShoveEnding.Tips),
        new($"{PlainLabel.Of(opponent, LongestName)} wins by tilt or lift", Palette.Robot(1), 50, 1.4, o => o.Winner == 1 && o.Ending == ShoveEnding.Tips),
        new("stalemate", Palette.Grey, 90, 0.5, o => o.Winner < 0),
        new($"{PlainLabel.Of(robot, LongestName)} wins by tilt or lift", Palette.Robot(0), 80, 0.5, o => o.Winner == 0 && o.Ending == ShoveEnding.Tips),
        new($"{robot} wins", Palette.Robot(0), 255, 0.5, o => o.Winner == 0 && o.Ending != ShoveEnding.Tips),
    ];

    internal static PlotModel Distribution(PlotLook look, string title, string robot, string opponent, MatchEnd[] good) =>
        Distribution(look, title, Columns.Of(good, Math.Max(0.02, good.Max(o => Math.Abs(o.GroundGained))), Kinds(robot, opponent)));

    private static PlotModel Distribution(PlotLook look, string title, Columns columns)
    {
        PlotModel model = Chart.Model(look, title);
        model.Axes.Add(Chart.Axis(AxisPosition.Bottom, "Ground gained [m]"));
        LinearAxis count = Chart.Axis(AxisPosition.Left, "Matches");
        count.Minimum = 0.0;
        count.MaximumPadding = 0.08;
        model.Axes.Add(count);
        double[] below = new double[Bins];
        for (int k = 0; k < columns.Kinds.Length; k++)
        {
            Kind kind = columns.Kinds[k];
            var series = new RectangleBarSeries { Title = kind.Label, FillColor = OxyColor.FromAColor(kind.Alpha, kind.Shade), StrokeColor = OxyColors.Black, StrokeThickness = kind.Stroke };
            for (int bin = 0; bin < Bins; bin++)
            {
                long matches = columns.Counts[k, bin];
                if (matches > 0)
                {
                    double left = (bin * columns.Width) - columns.Most;
                    series.Items.Add(new RectangleBarItem(left, below[bin], left + columns.Width, below[bin] + matches));
                    below[bin] += matches;
                }
            }

            if (series.Items.Count > 0)
            {
                model.Series.Add(series);
            }
        }

        return model;
    }

    // What the named ones do not carry stands with them in grey, so that nobody takes them for the whole
    internal static PlotModel Inputs(PlotLook look, InputShare[] inputs)
    {
        PlotModel model = Chart.Model(look, InputsTitle, NameWidth);
        LinearAxis share = Chart.Axis(AxisPosition.Bottom, "Share of the ground's variance [%], with 95 % interval");
        share.Minimum = 0.0;
        share.Maximum = Math.Max(10.0, 115.0 * inputs.Max(i => i.Share.High));
        model.Axes.Add(share);
        model.Axes.Add(Chart.WordAxis(look, AxisPosition.Left, "", [.. inputs.Select(i => i.Name)], NameWidth));
        for (int i = 0; i < inputs.Length; i++)
        {
            (double value, double low, double high) = (100.0 * inputs[i].Share.Value, 100.0 * inputs[i].Share.Low, 100.0 * inputs[i].Share.High);
            bool isRest = inputs[i].Name == OddsWords.Rest;
            RectangleAnnotation bar = Chart.Box(0.0, value, i - 0.34, i + 0.34, OxyColor.FromAColor(isRest ? (byte)60 : (byte)110, isRest ? Palette.Grey : Palette.Ink), AnnotationLayer.BelowSeries);
            (bar.Stroke, bar.StrokeThickness) = (isRest ? Palette.Grey : Palette.Ink, 1.0);
            TextAnnotation words = Chart.Words(FormattableString.Invariant($"{value:0} %"), high, i, HorizontalAlignment.Left);
            words.Offset = new ScreenVector(6, 0);
            model.Annotations.Add(bar);
            model.Annotations.Add(words);
            Chart.AddWhisker(model, low, high, i);
        }

        return model;
    }

    private sealed record Kind(string Label, OxyColor Shade, byte Alpha, double Stroke, Func<MatchEnd, bool> Has);

    // Matches by kind and ground, from -Most to Most
    private sealed record Columns(Kind[] Kinds, long[,] Counts, double Most)
    {
        public double Width => 2.0 * Most / Bins;

        public static Columns Of(IEnumerable<MatchEnd> outcomes, double most, Kind[] kinds)
        {
            var columns = new Columns(kinds, new long[kinds.Length, Bins], most);
            foreach (MatchEnd end in outcomes.Where(o => !o.HasFailed))
            {
                int kind = Array.FindIndex(kinds, k => k.Has(end));
                columns.Counts[kind, Math.Clamp((int)((end.GroundGained + most) / columns.Width), 0, Bins - 1)]++;
            }

            return columns;
        }
    }
}
