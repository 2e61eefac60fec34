namespace PushSim.Cli.Shared;

/// <summary>Forms of a picture's file.</summary>
[Flags]
internal enum PictureFormat
{
    /// <summary>No file.</summary>
    None = 0,

    /// <summary>Dots, 900 px wide.</summary>
    Png = 1,

    /// <summary>Shapes, for pages and for drawing on.</summary>
    Svg = 2,

    /// <summary>A4, for printing.</summary>
    Pdf = 4,
}
