using System.Text;
using System.Text.RegularExpressions;
using PushSim.Plotting.Plots;
using PushSim.Runs;
using PushSim.Tests;
using Xunit;

namespace PushSim.Plotting.Tests.Drawing;

public class PlotPdfTests
{
    private static byte[] Pdf(RunResult result)
    {
        using var stream = new MemoryStream();
        RunPlot.Of(result).WritePdf(stream);
        return stream.ToArray();
    }

    // "FontFile2" is the PDF name of an embedded TrueType font (ISO 32000-1, 9.9, from memory)
    [Fact]
    public void It_carries_its_font()
    {
        string pdf = Encoding.Latin1.GetString(Pdf(Simulator.Run(TestRobots.Pull())));
        Assert.StartsWith("%PDF-1.", pdf);
        Assert.Contains("/FontFile2", pdf);
        Assert.Matches(@"/BaseFont\s*/\S*DejaVuSans", pdf);
        Assert.DoesNotContain("/CreationDate", pdf);
    }

    // four panels fit on one page, nine on two
    [Fact]
    public void Panels_that_do_not_fit_go_to_the_next_page()
    {
        Assert.Equal(1, Pages(Pdf(Simulator.Run(TestRobots.Pull()))));
        Assert.Equal(2, Pages(Pdf(Simulator.Run(TestRobots.Shove(TestRobots.FourWheels(), TestRobots.FourWheels())))));
    }

    [Fact]
    public void The_same_run_gives_the_same_bytes() => Assert.Equal(Pdf(Simulator.Run(TestRobots.Spot())), Pdf(Simulator.Run(TestRobots.Spot())));

    // 535 pt between the margins for 900 px, unless 782 pt are too few for the height: a square of thirty robots has 2010 px and must not be cut off
    [Fact]
    public void A_chart_higher_than_a_page_is_drawn_smaller()
    {
        Assert.Equal(535.0 / 900.0, LadderScale(5), 1e-4);
        Assert.Equal(782.0 / 2010.0, LadderScale(30), 1e-4);
    }

    private static double LadderScale(int robots)
    {
        IReadOnlyList<IReadOnlyList<double?>> shares = [.. Enumerable.Range(0, robots).Select(_ => (IReadOnlyList<double?>)[.. Enumerable.Repeat<double?>(0.5, robots)])];
        using var stream = new MemoryStream();
        LadderPlot.Of([.. Enumerable.Range(0, robots).Select(i => $"robot {i}")], shares, [.. Enumerable.Repeat((0.0, -1.0, 1.0), robots)]).WritePdf(stream);

        // the page in points of a 300th of an inch, then the panels on it
        Match panels = Regex.Match(FirstPage(stream.ToArray()), @"(?m)^([\d.]+) 0 0 \1 [\d.]+ [\d.]+ cm");
        return 72.0 / 300.0 * double.Parse(panels.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    // the first stream that draws: all are deflated (ISO 32000-1, 7.4.4, from memory)
    private static string FirstPage(byte[] pdf)
    {
        string text = Encoding.Latin1.GetString(pdf);
        foreach (Match m in Regex.Matches(text, "stream\r?\n"))
        {
            try
            {
                using var inflate = new System.IO.Compression.ZLibStream(new MemoryStream(pdf, m.Index + m.Length, pdf.Length - m.Index - m.Length), System.IO.Compression.CompressionMode.Decompress);
                using var reader = new StreamReader(inflate, Encoding.Latin1);
                string content = reader.ReadToEnd();
                if (content.Contains(" cm\n", StringComparison.Ordinal))
                {
                    return content;
                }
            }
            catch (InvalidDataException)
            {
                // no deflated stream
            }
        }

        return "";
    }

    private static int Pages(byte[] pdf) => Regex.Matches(Encoding.Latin1.GetString(pdf), @"/Type\s*/Page\b(?!s)").Count;
}
