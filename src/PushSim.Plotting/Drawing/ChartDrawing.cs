namespace PushSim.Plotting.Drawing;

/// <summary>A chart that is no panel: drawn anew for each place it is shown in.</summary>
/// <param name="Title">Its title; a page prints it as a heading.</param>
/// <param name="Words">Its content in words, for those who cannot see it.</param>
/// <param name="Height">Height [px].</param>
/// <param name="Draw">Draws it for a look.</param>
internal sealed record ChartDrawing(string Title, string Words, int Height, Func<PlotLook, PlotModel> Draw);
