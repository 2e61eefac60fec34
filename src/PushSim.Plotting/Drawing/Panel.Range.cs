using OxyPlot.Axes;

namespace PushSim.Plotting.Drawing;

/// <content>How far the vertical axis of a panel reaches, and the room that its numbers take.</content>
internal sealed partial class Panel
{
    // The vertical axis spans at least twice this, so that what nobody could measure stays flat and its numbers short [unit of the axis].
    private static readonly (string Unit, double Span)[] s_leastSpans =
        [("[N]", 0.01), ("[mm]", 0.1), ("[m/s]", 0.01), ("[m/s²]", 0.1), ("[rad/s]", 0.05), ("[A]", 0.05), ("[V]", 0.05), ("[°C]", 0.5), ("[%]", 0.2), ("", 1e-3)];

    // Of the title of the vertical axis with the blanks to both sides, and of all above and below the area between the axes [px].
    private const double TitleRoom = 34.0;
    private const double RoomAboveAndBelow = 95.0;

    private double LeastSpan => s_leastSpans.First(l => YTitle.EndsWith(l.Unit, StringComparison.Ordinal)).Span;

    // Rounding noise around a constant would fill the panel: open it to a tenth of the value at least.
    private void KeepNoiseFlat()
    {
        double[] values = [.. _curves.SelectMany(c => c.Points).Select(p => p.Y)];
        Axis axis = _model.Axes[1];
        if (values.Length == 0 || _model.PlotType == PlotType.Cartesian || !double.IsNaN(axis.Maximum))
        {
            return;
        }

        double low = values.Concat(_levels).Min();
        double high = values.Concat(_levels).Max();
        if (_levels.Count > 0)
        {
            double edge = 0.08 * (high - low);
            (axis.Minimum, axis.Maximum) = (low - edge, high + edge);
            return;
        }

        double span = LeastSpan;
        double least = Math.Max(0.1 * Math.Max(Math.Abs(low), Math.Abs(high)), span);
        if (axis.Minimum == 0.0)
        {
            axis.Maximum = high < 2.0 * span ? 2.0 * span : double.NaN;
        }
        else if (high - low < least)
        {
            double middle = high - low < 0.1 * span && Math.Abs(high) < span ? 0.0 : 0.5 * (low + high);
            axis.Minimum = middle - least;
            axis.Maximum = middle + least;
        }
    }

    // Room for the numbers and the title of the vertical axis [px]: a title that finds none is cut at the edge of a telephone.
    private double NumberRoom()
    {
        Axis axis = _model.Axes[1];
        double[] values = [.. _curves.SelectMany(c => c.Points).Select(p => p.Y).Concat([axis.Minimum, axis.Maximum]).Where(double.IsFinite)];
        double low = double.IsFinite(axis.Minimum) ? axis.Minimum : values.DefaultIfEmpty(0.0).Min();
        double high = double.IsFinite(axis.Maximum) ? axis.Maximum : values.DefaultIfEmpty(0.0).Max();
        if (!(high > low) || axis.Title.Length == 0)
        {
            return 0.0;
        }

        // a number each so many px, at a round step
        double step = (high - low) * axis.IntervalLength / (PlotSheet.Height(Rows) - RoomAboveAndBelow);
        string format = "F" + Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 9).ToString(CultureInfo.InvariantCulture);
        return TitleRoom + new[] { low, high }.Max(v => PlotFont.Width(v.ToString(format, CultureInfo.InvariantCulture), Chart.FontSize));
    }
}
