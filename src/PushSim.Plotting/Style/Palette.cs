namespace PushSim.Plotting.Style;

/// <summary>
/// Line looks that differ in colour, dash and width, so that lines are told apart without colour and equal curves still show
/// each other. Two hues are the robots' and nothing else has them. Colours: Okabe and Ito, Color Universal Design, 2008 (from memory), safe for
/// colour-blind readers.
/// </summary>
internal static class Palette
{
    // those of the robots first
    private static readonly OxyColor[] s_colours =
    [
        OxyColor.FromRgb(0, 114, 178), OxyColor.FromRgb(213, 94, 0), OxyColor.FromRgb(0, 134, 106), OxyColor.FromRgb(156, 74, 133),
        OxyColors.Undefined, OxyColors.Undefined, OxyColor.FromRgb(27, 35, 45), OxyColor.FromRgb(109, 109, 109),
    ];

    // what is no robot: ink, green, purple, grey
    private static readonly int[] s_lines = [6, 2, 3, 7];

    private static readonly LineStyle[] s_dashes =
    [
        LineStyle.Solid, LineStyle.Dash, LineStyle.Dot, LineStyle.DashDot, LineStyle.LongDash, LineStyle.DashDotDot, LineStyle.LongDashDot, LineStyle.Dot,
    ];

    /// <summary>Frame of the plot area and its ticks.</summary>
    public static OxyColor Rule { get; } = OxyColor.FromRgb(150, 150, 150);

    public static OxyColor Grid { get; } = OxyColor.FromRgb(228, 228, 228);

    /// <summary>Words and lines upon a shade, light or dark as the page may be around it. So dark that this or white has a contrast of 4.5 on any shade.</summary>
    public static OxyColor OnShade { get; } = OxyColor.FromRgb(5, 5, 5);

    /// <summary>Colour of words upon a shade: white or <see cref="OnShade"/>, whichever stands out more.</summary>
    /// <param name="shade">The shade.</param>
    public static OxyColor On(OxyColor shade) => Contrast(OxyColors.White, shade) >= Contrast(OnShade, shade) ? OxyColors.White : OnShade;

    /// <summary>Contrast of two colours, 1 to 21 [1]. W3C, Web Content Accessibility Guidelines 2.2, 2023, "contrast ratio".</summary>
    /// <param name="a">One colour.</param>
    /// <param name="b">The other.</param>
    public static double Contrast(OxyColor a, OxyColor b)
    {
        (double high, double low) = (Math.Max(Luminance(a), Luminance(b)), Math.Min(Luminance(a), Luminance(b)));
        return (high + 0.05) / (low + 0.05);
    }

    // relative luminance [1], same source
    private static double Luminance(OxyColor c) => (0.2126 * Linear(c.R)) + (0.7152 * Linear(c.G)) + (0.0722 * Linear(c.B));

    private static double Linear(byte part) => part / 255.0 is var s && s <= 0.04045 ? s / 12.92 : Math.Pow((s + 0.055) / 1.055, 2.4);

    public static OxyColor Mark { get; } = OxyColor.FromRgb(90, 90, 90);

    /// <summary>Ink, in which bars and single curves are drawn.</summary>
    public static OxyColor Ink => s_colours[6];

    /// <summary>Grey, for what comes second.</summary>
    public static OxyColor Grey => s_colours[7];

    /// <summary>Hue of a robot: 0 the first, 1 its opponent.</summary>
    public static OxyColor Robot(int i) => s_colours[i];

    /// <summary>Colour of a line that is no robot.</summary>
    public static OxyColor Line(int i) => s_colours[s_lines[i % s_lines.Length]];

    public static LineStyle Dash(int i) => s_dashes[i % s_dashes.Length];

    /// <summary>Earlier lines are wider, so that a later equal one lies on them like a stripe [px].</summary>
    public static double Width(int i) => i == 0 ? 3.2 : i == 1 ? 2.4 : 1.8;

    /// <summary>Name of a colour in a page's style, without its opacity: "c0", "c1", ... for lines, or what it is used for; null for a shade, which stays as it is.</summary>
    public static string? Name(OxyColor colour)
    {
        var opaque = OxyColor.FromAColor(byte.MaxValue, colour);
        int line = Array.IndexOf(s_colours, opaque);
        return line >= 0 ? FormattableString.Invariant($"c{line}")
            : opaque == OxyColors.White ? "paper"
            : opaque == Mark ? "mark"
            : opaque == Rule ? "rule"
            : opaque == Grid ? "grid"
            : opaque == OxyColors.Black ? "ink"
            : null;
    }
}
