namespace PushSim.Words.Runs;

/// <summary>How much of its grip a robot uses that is to stay where it is.</summary>
public static class GripShare
{
    // A wheel that carries less says nothing [N].
    private const double LeastLoad = 1e-3;

    /// <summary>The wheel that is nearest to sliding at the end, and the share of its grip that it uses [1]; null of other manoeuvres and where none carries anything.</summary>
    /// <param name="run">The run.</param>
    public static (string Wheel, double Share)? Of(RunResult run)
    {
        if (run.Scenario.Manoeuvre.Traits.Family != ManoeuvreFamily.Hold || run.Time.Length == 0)
        {
            return null;
        }

        var used = run.Trace.Wheels.Select(w => (w.Name, Share: At(w, run.Time.Length - 1))).Where(w => double.IsFinite(w.Share)).ToList();
        return used.Count == 0 ? null : used.MaxBy(w => w.Share);
    }

    /// <summary>Share of its grip that a wheel uses at a sample [1]; NaN where it carries nothing.</summary>
    /// <param name="wheel">The wheel.</param>
    /// <param name="sample">Number of the sample [1].</param>
    public static double At(WheelTrace wheel, int sample) =>
        // friction of the moment counts load, dust and the floor
        wheel.Load[sample] > LeastLoad && wheel.Friction[sample] > 0.0 ? double.Hypot(wheel.LongitudinalForce[sample], wheel.LateralForce[sample]) / (wheel.Friction[sample] * wheel.Load[sample]) : double.NaN;
}
