using OxyPlot;
using OxyPlot.Annotations;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Style;
using PushSim.Plotting.Svg;
using Xunit;

namespace PushSim.Plotting.Tests.Drawing;

public class OutlineTests
{
    private const int Moments = 4;
    private const double Height = 1.9 * 260.0;

    public static TheoryData<int, bool> Cases()
    {
        TheoryData<int, bool> cases = [];
        for (int seed = 0; seed < 40; seed++)
        {
            cases.Add(seed, seed % 2 == 0);
        }

        return cases;
    }

    // two robots that meet near the origin, go back and forth and turn; every fourth pair stays straight, every tenth stands still
    [Theory]
    [MemberData(nameof(Cases))]
    public void Times_stand_in_the_picture_off_all_outlines_and_off_each_other(int seed, bool isPhone)
    {
        var random = new Random(seed);
        Panel panel = new Panel("map", "x [m]", "y [m]").AsMap(rows: 1.9);
        List<(double X, double Y)[]> outlines = [];
        double[] x = [-0.1, 0.1];
        double[] turn = [0.0, 0.0];
        double width = 0.1 + (0.2 * random.NextDouble());
        for (int k = 0; k < Moments; k++)
        {
            double step = seed % 10 == 3 ? 0.0 : 0.3 * (random.NextDouble() - 0.5);
            for (int robot = 0; robot < 2; robot++)
            {
                x[robot] += step;
                turn[robot] += seed % 4 == 0 ? 0.0 : 0.8 * (random.NextDouble() - 0.5);
                (double X, double Y)[] corners = [.. Rectangle(x[robot], 0.18, robot == 0 ? width : 0.16, turn[robot])];
                outlines.Add(corners);
                panel.AddOutline(corners, robot == 0 ? "own" : "other", robot, k, Moments, FormattableString.Invariant($"{0.9 * k:0.00} s"));
            }
        }

        PlotLook look = isPhone ? PlotLook.Phone : PlotLook.File;
        PlotModel model = panel.Build(look);
        ((IPlotModel)model).Update(true);
        ((IPlotModel)model).Render(new SvgFileContext(), new OxyRect(0, 0, look.Width, Height));
        OxyRect[] words = [.. model.Annotations.OfType<TextAnnotation>().Select(Box)];
        Assert.Equal(2 * Moments, words.Length);
        for (int i = 0; i < words.Length; i++)
        {
            OxyRect box = words[i];
            Assert.True(box.Left >= model.PlotArea.Left && box.Right <= model.PlotArea.Right && box.Top >= model.PlotArea.Top && box.Bottom <= model.PlotArea.Bottom, $"{box} in {model.PlotArea}");
            Assert.All(words[(i + 1)..], other => Assert.False(Meet(box, other), $"{box} meets {other}"));
            Assert.All(outlines, corners => Assert.False(Meet(box, Around([.. corners.Select(Screen)])), "a time over a robot"));
        }

        ScreenPoint Screen((double X, double Y) p) => model.Axes[0].Transform(p.X, p.Y, model.Axes[1]);

        OxyRect Box(TextAnnotation text)
        {
            ScreenPoint at = Screen((text.TextPosition.X, text.TextPosition.Y)) + text.Offset;
            double w = PlotFont.Width(text.Text!, text.FontSize);
            return new OxyRect(text.TextHorizontalAlignment == HorizontalAlignment.Left ? at.X : at.X - w, at.Y - (0.5 * text.FontSize), w, text.FontSize);
        }
    }

    private static IEnumerable<(double X, double Y)> Rectangle(double x, double length, double width, double turn) =>
        new[] { (0.5, 0.5), (0.5, -0.5), (-0.5, -0.5), (-0.5, 0.5) }.Select(c =>
        {
            (double a, double b) = (c.Item1 * length, c.Item2 * width);
            return (x + (a * Math.Cos(turn)) - (b * Math.Sin(turn)), (a * Math.Sin(turn)) + (b * Math.Cos(turn)));
        });

    private static OxyRect Around(ScreenPoint[] points) => new(
        new ScreenPoint(points.Min(p => p.X), points.Min(p => p.Y)), new ScreenPoint(points.Max(p => p.X), points.Max(p => p.Y)));

    private static bool Meet(OxyRect a, OxyRect b) => a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;
}
