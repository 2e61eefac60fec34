using PushSim.Analysis.Fit;

namespace PushSim.Scenarios.Bench;

/// <summary>What happens on a bench.</summary>
/// <param name="Time">When, on the clock of the lines' arrival [s].</param>
public abstract record BenchEvent(double Time)
{
    /// <summary>A reading.</summary>
    /// <param name="Time">Its time [s].</param>
    /// <param name="Force">Its force, tare taken off and scaled [N]; before the tare is known as the line says it.</param>
    public sealed record Sample(double Time, double Force) : BenchEvent(Time);

    /// <summary>The bench waits for something else from now on.</summary>
    /// <param name="Time">Since when [s].</param>
    /// <param name="For">What for.</param>
    public sealed record Waits(double Time, BenchAsk For) : BenchEvent(Time);

    /// <summary>The reading of the slack cell was taken.</summary>
    /// <param name="Time">When [s].</param>
    /// <param name="Zero">What the lines say when it is slack [N, or their own unit before a scale is known].</param>
    /// <param name="Noise">Standard deviation of that [N, or their own unit].</param>
    /// <param name="Below">How far the cell rests below its earlier tare [N]; 0 where there was none.</param>
    /// <param name="IsWhole">Whether all readings so far are judged again from the new tare.</param>
    public sealed record Tared(double Time, double Zero, double Noise, double Below = 0.0, bool IsWhole = true) : BenchEvent(Time);

    /// <summary>The scale was taken from the known mass.</summary>
    /// <param name="Time">When [s].</param>
    /// <param name="Factor">Newton per unit of the lines, or per newton that they claim [N].</param>
    /// <param name="Error">Noise of a single reading as a share of the mass's change of it: more than the error of the mean [1].</param>
    public sealed record Scaled(double Time, double Factor, double Error) : BenchEvent(Time);

    /// <summary>A pull has begun.</summary>
    /// <param name="Time">When [s].</param>
    public sealed record PullBegan(double Time) : BenchEvent(Time);

    /// <summary>A pull has ended.</summary>
    /// <param name="Time">When it was told [s].</param>
    /// <param name="Number">Its number from 1, good or not [1].</param>
    /// <param name="Pull">What was found in it.</param>
    public sealed record PullEnded(double Time, int Number, WatchedPull Pull) : BenchEvent(Time);

    /// <summary>Nothing came for a while.</summary>
    /// <param name="Time">Until when [s].</param>
    /// <param name="From">Since when [s].</param>
    public sealed record Gap(double Time, double From) : BenchEvent(Time);

    /// <summary>A line is no reading.</summary>
    /// <param name="Time">When [s].</param>
    /// <param name="Line">Its number from 1 [1].</param>
    /// <param name="Text">What it says, cut, without signs that no terminal should get.</param>
    public sealed record Stray(double Time, int Line, string Text) : BenchEvent(Time);

    /// <summary>The lines cannot be understood without more being said: nothing follows.</summary>
    /// <param name="Time">When [s].</param>
    /// <param name="Problem">What is wrong, with advice.</param>
    public sealed record Wrong(double Time, Problem Problem) : BenchEvent(Time);
}
