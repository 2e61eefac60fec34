using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Style;
using PushSim.Plotting.Svg;
using Xunit;

namespace PushSim.Plotting.Tests.Drawing;

public class StripTests
{
    private const int Moments = 4;

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
    public void Moments_stand_under_each_other_off_all_words_and_in_one_scale(int seed, bool isPhone)
    {
        var random = new Random(seed);
        double[] x = [-0.1, 0.1];
        double[] turn = [0.0, 0.0];
        double width = 0.1 + (0.2 * random.NextDouble());
        List<MapStrip> strips = [];
        for (int k = 0; k < Moments; k++)
        {
            double step = seed % 10 == 3 ? 0.0 : 0.3 * (random.NextDouble() - 0.5);
            List<MapShape> shapes = [];
            for (int robot = 0; robot < 2; robot++)
            {
                x[robot] += step;
                turn[robot] += seed % 4 == 0 ? 0.0 : 0.8 * (random.NextDouble() - 0.5);
                shapes.Add(new MapShape(robot == 0 ? "own" : "other", robot, [.. Rectangle(x[robot], 0.18, robot == 0 ? width : 0.16, turn[robot])], []));
            }

            strips.Add(new MapStrip(FormattableString.Invariant($"at {0.9 * k:0.00} s"), shapes));
        }

        PlotLook look = isPhone ? PlotLook.Phone : PlotLook.File;
        Panel panel = new Panel("map", "x [m]", "").WithStrips(strips, [new MapLine("line of own", 0, -0.6), new MapLine("line of other", 1, 0.6)]);
        PlotModel model = panel.Build(look);
        ((IPlotModel)model).Update(true);
        ((IPlotModel)model).Render(new SvgFileContext(), new OxyRect(0, 0, look.Width, PlotSheet.Height(panel.Rows)));

        OxyRect[] words = [.. model.Annotations.OfType<TextAnnotation>().Select(Box)];
        OxyRect[] robots = [.. model.Series.OfType<LineSeries>().Select(s => Around([.. s.Points.Select(p => Screen(p.X, p.Y))]))];
        Assert.Equal(Moments + 2, words.Length);
        Assert.Equal(2 * Moments, robots.Length);
        for (int i = 0; i < words.Length; i++)
        {
            OxyRect box = words[i];
            Assert.True(box.Left >= model.PlotArea.Left && box.Right <= model.PlotArea.Right && box.Top >= model.PlotArea.Top && box.Bottom <= model.PlotArea.Bottom, $"{box} in {model.PlotArea}");
            Assert.All(words[(i + 1)..], other => Assert.False(Meet(box, other), $"{box} meets {other}"));
            Assert.All(robots, robot => Assert.False(Meet(box, robot), $"the words {box} over a robot {robot}"));
        }

        // the first moment on top, each strip below the one before; equal scales on both axes
        for (int k = 1; k < Moments; k++)
        {
            Assert.True(robots[(2 * k)..((2 * k) + 2)].Min(r => r.Top) > robots[((2 * k) - 2)..(2 * k)].Max(r => r.Bottom), $"moment {k} meets the one above");
        }

        Assert.Equal(1.0, (Screen(1.0, 0.0).X - Screen(0.0, 0.0).X) / (Screen(0.0, 0.0).Y - Screen(0.0, 1.0).Y), 0.02);

        ScreenPoint Screen(double px, double py) => model.Axes[0].Transform(px, py, model.Axes[1]);

        OxyRect Box(TextAnnotation text)
        {
            ScreenPoint at = Screen(text.TextPosition.X, text.TextPosition.Y) + text.Offset;
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
