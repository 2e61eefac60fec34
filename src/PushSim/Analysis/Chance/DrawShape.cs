namespace PushSim.Analysis.Chance;

/// <summary>How a drawn value lies about its middle.</summary>
public enum DrawShape
{
    /// <summary>Normal, the half-width is two standard deviations.</summary>
    Normal,

    /// <summary>Everywhere alike within the half-width.</summary>
    Uniform,

    /// <summary>Falling straight from the middle to the ends.</summary>
    Triangular,

    /// <summary>Logarithms are normal: the factor 1 + half-width/middle is two standard deviations, up and down.</summary>
    Factor,
}
