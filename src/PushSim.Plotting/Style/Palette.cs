namespace PushSim.Plotting.Style;

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

    /// <summary>Frame of the plot area and its ticks.</summary>
    public static OxyColor Rule { get; } = OxyColor.FromRgb(150, 150, 150);

    public static OxyColor Grid { get; } = OxyColor.FromRgb(228, 228, 228);

    /// <summary>Words and lines upon a shade, light or dark as the page may be around it.</summary>
    public static OxyColor OnShade { get; } = OxyColor.FromRgb(17, 17, 17);

    public static OxyColor Mark { get; } = OxyColor.FromRgb(90, 90, 90);

    public static OxyColor Colour(int i) => s_colours[i % s_colours.Length];

    public static LineStyle Dash(int i) => s_dashes[i % s_dashes.Length];

    /// <summary>Earlier lines are wider, so that a later equal one lies on them like a stripe [px].</summary>
    public static double Width(int i) => i == 0 ? 3.2 : i == 1 ? 2.4 : 1.8;

    /// <summary>Name of a colour in a page's style, without its opacity: "c0", "c1", ... for lines, or what it is used for; null for a shade, which stays as it is.</summary>
    public static string? Name(OxyColor colour)
    {
        var opaque = OxyColor.FromAColor(byte.MaxValue, colour);
        int line = Array.IndexOf(s_colours, opaque);
        return line >= 0 && opaque != OxyColors.Black ? FormattableString.Invariant($"c{line}")
            : opaque == OxyColors.White ? "paper"
            : opaque == Mark ? "mark"
            : opaque == Rule ? "rule"
            : opaque == Grid ? "grid"
            : opaque == OxyColors.Black ? "ink"
            : null;
    }
}
