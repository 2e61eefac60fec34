namespace PushSim.Scenarios.Editing;

/// <summary>A piece of a slider's track: shares of the way and the values at its ends.</summary>
/// <param name="From">Share of the track where it begins [1].</param>
/// <param name="To">Share of the track where it ends [1].</param>
/// <param name="Low">Value where it begins [unit of the row].</param>
/// <param name="High">Value where it ends [unit of the row].</param>
public sealed record TrackPart(double From, double To, double Low, double High)
{
    // Ends whose ratio is more get equal ways for equal factors [1].
    private const double Decade = 10.0;

    /// <summary>Whether equal ways are equal factors.</summary>
    public bool IsLogarithmic => Low > 0.0 && High / Low > Decade;

    /// <summary>Value at a share of the whole track [unit of the row].</summary>
    /// <param name="share">Share, on this piece [1].</param>
    public double At(double share) => Between(Low, High, (share - From) / (To - From));

    /// <summary>Value at a share of the way between two values of this piece [unit of the row].</summary>
    /// <param name="a">One value [unit of the row].</param>
    /// <param name="b">The other [unit of the row].</param>
    /// <param name="way">Share of the way from the one to the other [1].</param>
    public double Between(double a, double b, double way) => IsLogarithmic && a > 0.0 && b > 0.0 ? a * Math.Pow(b / a, way) : a + (way * (b - a));
}
