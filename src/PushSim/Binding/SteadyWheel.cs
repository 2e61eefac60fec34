namespace PushSim.Binding;

/// <summary>A wheel without its hops and the strokes of its chatter: a tyre that buzzes leaves the floor and sticks to it many times a second, and still carries its share and slides. Load and
/// slide go through first-order lags; a tyre in the air neither sticks nor slides.</summary>
/// <param name="mean">Mean load of the robot's wheels standing, which it starts from [N].</param>
internal struct SteadyWheel(double mean)
{
    // Hops, and strokes of a chatter, of this time and shorter change nothing [s].
    private const double HopTime = 0.02;
    private const double StrokeTime = 0.01;

    // A wheel that carries less than this share of the mean load is off the floor [1].
    private const double Unloaded = 0.1;

    // Share of what it carries over which a tyre must slide to count as sliding [1].
    private const double Mostly = 0.5;

    private readonly double _least = Unloaded * mean;
    private double _load = mean;
    private double _carried = mean;
    private double _slides;

    /// <summary>Takes the next moment and tells what binds the wheel.</summary>
    /// <param name="load">Load now [N].</param>
    /// <param name="slides">1 where its tyre slides now, 0 else [1].</param>
    /// <param name="otherwise">What binds it on the floor while its tyre does not slide.</param>
    /// <param name="time">Time since the moment before [s].</param>
    public BindingKind Next(double load, double slides, BindingKind otherwise, double time)
    {
        _load += (load - _load) * time / (HopTime + time);
        double part = time / (StrokeTime + time);
        _carried += (load - _carried) * part;
        _slides += ((slides * load) - _slides) * part;
        return _load < _least ? BindingKind.Lifted : otherwise != BindingKind.Nothing && _slides > Mostly * _carried ? BindingKind.Tyre : otherwise;
    }
}
