using PushSim.Contact;
using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Compares the front edges of two robots of which one has a ramp in front: a difference below what both sink and rock decides nothing.</summary>
internal static class TipHeights
{
    /// <summary>The warning, if there is one to give.</summary>
    /// <param name="histories">Both robots.</param>
    /// <param name="touch">When they first touch [s]; NaN if they do not.</param>
    public static IEnumerable<RunWarning> Of(IReadOnlyList<RunHistory> histories, double touch)
    {
        if (histories.Count < 2 || double.IsNaN(touch))
        {
            yield break;
        }

        (double tip, double width, bool isRamp)[] fronts = [.. histories.Select(h => Front(h, h.IndexAt(touch)))];
        double difference = fronts[1].tip - fronts[0].tip;
        double both = fronts[0].width + fronts[1].width;
        if ((fronts[0].isRamp || fronts[1].isRamp) && Math.Abs(difference) < both)
        {
            yield return new RunWarning.TipsUndecided(difference, both);
        }
    }

    // Height of the foremost face's lower edge on the standing robot; what it sinks, and rocks until the touch
    private static (double Tip, double Width, bool IsRamp) Front(RunHistory h, int touch)
    {
        OutlineSettings outline = h.Robot.OutlineOrBox;
        int face = Enumerable.Range(0, outline.Faces.Count).MaxBy(i => outline.Corners[i].X + outline.Corners[(i + 1) % outline.Corners.Count].X);
        double sink = StandingHeights.Sinks(h.Robot) is { Length: > 0 } sinks ? sinks[face] : 0.0;
        double x = ((outline.Corners[face].X + outline.Corners[(face + 1) % outline.Corners.Count].X) / 2.0) - h.Robot.Chassis.CentreOfMassX;
        double[] height = [.. Enumerable.Range(0, touch + 1).Select(i => h.Trace.Body.Heave[i] - (x * h.Trace.Body.Pitch[i]))];
        return (outline.Faces[face].LowerEdge - sink, Math.Max(0.0, sink) + height.Max() - height.Min(), outline.Faces[face].RampAngle is not null);
    }
}
