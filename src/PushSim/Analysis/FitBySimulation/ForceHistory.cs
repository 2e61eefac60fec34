namespace PushSim.Analysis.FitBySimulation;

/// <summary>A force at an even step from time zero, straight between the samples and level outside.</summary>
/// <param name="Step">Time from sample to sample [s].</param>
/// <param name="Values">The samples, two or more [N].</param>
internal sealed record ForceHistory(double Step, double[] Values)
{
    /// <summary>Force at a time [N].</summary>
    public double At(double time)
    {
        (int i, double share) = Place(time);
        return Values[i] + (share * (Values[i + 1] - Values[i]));
    }

    /// <summary>Rate of change at a time [N/s].</summary>
    public double SlopeAt(double time)
    {
        (int i, _) = Place(time);
        return time < 0.0 || time > Step * (Values.Length - 1) ? 0.0 : (Values[i + 1] - Values[i]) / Step;
    }

    /// <summary>First time at which a force is reached [s]; NaN if never.</summary>
    public double FirstAt(double force)
    {
        int i = Array.FindIndex(Values, v => v >= force);
        return i < 0 ? double.NaN : i * Step;
    }

    private (int Index, double Share) Place(double time)
    {
        double at = Math.Clamp(time / Step, 0.0, Values.Length - 1);
        int i = Math.Min((int)at, Values.Length - 2);
        return (i, at - i);
    }
}
