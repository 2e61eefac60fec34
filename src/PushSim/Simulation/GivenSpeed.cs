namespace PushSim.Simulation;

/// <summary>A drive that something from outside turns at a given speed, as the measured wheels of a log: what that takes is work from outside.</summary>
/// <param name="Drive">Index of the drive.</param>
/// <param name="Points">Its speed (s, rad/s) in rising time, straight between the points, the last one kept.</param>
public sealed record GivenSpeed(int Drive, IReadOnlyList<(double Time, double Speed)> Points)
{
    /// <summary>Speed at a time [rad/s].</summary>
    internal double At(double t)
    {
        int i = After(t);
        return i == 0 ? Points[0].Speed : i == Points.Count ? Points[^1].Speed : Points[i - 1].Speed + (SlopeAt(t) * (t - Points[i - 1].Time));
    }

    /// <summary>Slope of the piece that begins at a time or holds it [rad/s^2].</summary>
    internal double SlopeAt(double t)
    {
        int i = After(t);
        return i == 0 || i == Points.Count ? 0.0 : (Points[i].Speed - Points[i - 1].Speed) / (Points[i].Time - Points[i - 1].Time);
    }

    // the first point after a time
    private int After(double t)
    {
        int low = 0, high = Points.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = Points[middle].Time <= t ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
