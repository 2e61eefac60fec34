namespace PushSim.Words.Runs;

/// <summary>How much of its grip a robot uses that is to stay where it is.</summary>
internal static class GripShare
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

        // friction of the moment counts load, dust and the floor
        int last = run.Time.Length - 1;
        var used = run.Trace.Wheels.Where(w => w.Load[last] > LeastLoad && w.Friction[last] > 0.0)
            .Select(w => (w.Name, Share: double.Hypot(w.LongitudinalForce[last], w.LateralForce[last]) / (w.Friction[last] * w.Load[last]))).ToList();
        return used.Count == 0 ? null : used.MaxBy(w => w.Share);
    }
}
