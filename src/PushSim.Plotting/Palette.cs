using OxyPlot;

namespace PushSim.Plotting;

/// <summary>
/// Line looks that differ in colour, dash and width, so that lines are told apart without colour and equal curves still show
/// each other. Colours: Okabe and Ito, Color Universal Design, 2008 (from memory), safe for colour-blind readers.
/// </summary>
internal static class Palette
{
    private static readonly OxyColor[] s_colours =
    [
        OxyColor.FromRgb(0, 114, 178), OxyColor.FromRgb(213, 94, 0), OxyColor.FromRgb(0, 158, 115), OxyColor.FromRgb(204, 121, 167),
        OxyColor.FromRgb(86, 180, 233), OxyColor.FromRgb(230, 159, 0), OxyColor.FromRgb(0, 0, 0), OxyColor.FromRgb(120, 120, 120),
    ];

    private static readonly LineStyle[] s_dashes =
    [
        LineStyle.Solid, LineStyle.Dash, LineStyle.Dot, LineStyle.DashDot, LineStyle.LongDash, LineStyle.DashDotDot, LineStyle.LongDashDot, LineStyle.Dot,
    ];

    public static OxyColor Mark { get; } = OxyColor.FromRgb(90, 90, 90);

    public static OxyColor Colour(int i) => s_colours[i % s_colours.Length];

    public static LineStyle Dash(int i) => s_dashes[i % s_dashes.Length];

    /// <summary>Earlier lines are wider, so that a later equal one lies on them like a stripe [px].</summary>
    public static double Width(int i) => i == 0 ? 3.2 : i == 1 ? 2.4 : 1.8;
}
