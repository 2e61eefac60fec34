namespace PushSim.Plotting.Style;

/// <summary>Where a panel is shown: decides its width and whether it carries its own title.</summary>
/// <param name="Width">Width of the panel [px].</param>
/// <param name="LeftMargin">Room for the vertical axis, where its labels are numbers [px].</param>
/// <param name="HasTitle">Whether the title is drawn; a page prints it as a heading instead.</param>
internal sealed record PlotLook(int Width, double LeftMargin, bool HasTitle)
{
    /// <summary>Right of the plot area: half of the last number of the horizontal axis [px].</summary>
    public const double RightMargin = 18.0;

    /// <summary>Left and right of all [px].</summary>
    public const double Padding = 6.0;

    /// <summary>PNG, SVG and PDF.</summary>
    public static PlotLook File { get; } = new(900, 84.0, HasTitle: true);

    /// <summary>A page on a screen of a desk, and on paper.</summary>
    public static PlotLook Page { get; } = new(900, 84.0, HasTitle: false);

    /// <summary>The picture of an answer card, beside its numbers.</summary>
    public static PlotLook Hero { get; } = new(640, 70.0, HasTitle: false);

    /// <summary>A page on a telephone.</summary>
    public static PlotLook Phone { get; } = new(400, 62.0, HasTitle: false);

    /// <summary>Room for the vertical axis where its labels are words [px].</summary>
    public double WordMargin => Math.Max(LeftMargin, Width < File.Width ? 92.0 : 0.0);

    /// <summary>Width of the area between the axes [px].</summary>
    public double AreaWidth => Width - (2.0 * Padding) - LeftMargin - RightMargin;
}
