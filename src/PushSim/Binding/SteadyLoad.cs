namespace PushSim.Binding;

/// <summary>Load of a wheel without its hops: a tyre that chatters leaves the floor many times a second and still carries its share.</summary>
/// <param name="mean">Mean load of the robot's wheels standing, which it starts from [N].</param>
internal struct SteadyLoad(double mean)
{
    // Hops of this time and shorter are no lift [s].
    private const double Time = 0.02;

    // A wheel that carries less than this share of the mean load is off the floor [1].
    private const double Unloaded = 0.1;

    private readonly double _least = Unloaded * mean;
    private double _load = mean;

    /// <summary>Takes the next load, a first-order lag, and tells whether the wheel is off the floor.</summary>
    /// <param name="load">Load now [N].</param>
    /// <param name="time">Time since the one before [s].</param>
    public bool IsLifted(double load, double time)
    {
        _load += (load - _load) * time / (Time + time);
        return _load < _least;
    }
}
