namespace PushSim.Numerics;

/// <summary>Where a step may end: what the scalar and the lane integrator share.</summary>
internal static class StepLimits
{
    // A step shorter than this many spacings of doubles at its time is lost in rounding [1].
    private const double SmallestInSpacings = 16.0;

    /// <summary>Shortest step allowed at a time [s].</summary>
    /// <param name="settings">Limits of the run.</param>
    /// <param name="time">The time [s].</param>
    internal static double Smallest(IntegrationSettings settings, double time)
    {
        double size = Math.Abs(time);
        return Math.Max(settings.MinimumStep, SmallestInSpacings * (Math.BitIncrement(size) - size));
    }

    /// <summary>End of the next step; the last two steps before a segment's end share what is left, so that none is tiny [s].</summary>
    /// <param name="settings">Limits of the run.</param>
    /// <param name="time">Start of the step [s].</param>
    /// <param name="end">End of the segment [s].</param>
    /// <param name="wanted">Step that the control asks for [s].</param>
    /// <param name="longest">Longest step of the segment [s].</param>
    internal static double End(IntegrationSettings settings, double time, double end, double wanted, double longest)
    {
        double step = Math.Max(Math.Min(wanted, longest), Smallest(settings, time));
        double rest = end - time;
        if (step >= rest)
        {
            return end;
        }

        return time + (2.0 * step > rest ? 0.5 * rest : step);
    }
}
