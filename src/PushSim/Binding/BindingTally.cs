namespace PushSim.Binding;

/// <summary>Adds up, over time and driven wheels, how much of a robot's drive each kind set: the impulse, the size of a wheel's force times its time. A tenth more of what binds a
/// wheel adds about a tenth of that wheel's force, so the order of the impulses is that of the gains; but a tenth less resistance of the battery adds only a tenth of its sag.</summary>
internal sealed class BindingTally
{
    // So that a robot at top speed, whose wheels give nothing, still has an order [N].
    private const double LeastForce = 1e-9;

    // A battery that binds has lost a fifth to a half of its voltage: so much of a force goes with its resistance [1].
    private const double BatteryWeight = 0.3;

    private readonly double[] _impulse = new double[BindingRule.Kinds];
    private double _time;
    private double _lifted;

    /// <summary>Takes one wheel.</summary>
    /// <param name="kind">What binds it.</param>
    /// <param name="force">Its force along its rim [N].</param>
    /// <param name="time">For how long [s].</param>
    public void Add(BindingKind kind, double force, double time) => _impulse[(int)kind] += (Math.Abs(force) + LeastForce) * time;

    /// <summary>Takes the time of a moment, once for all its wheels.</summary>
    /// <param name="isLifted">Whether a driven wheel is off the floor.</param>
    /// <param name="time">For how long [s].</param>
    public void AddTime(bool isLifted, double time)
    {
        _time += time;
        _lifted += isLifted ? time : 0.0;
    }

    /// <summary>Forgets all.</summary>
    public void Clear()
    {
        Array.Clear(_impulse);
        (_time, _lifted) = (0.0, 0.0);
    }

    /// <summary>What bound the robot; null where nothing was commanded.</summary>
    public BindingShares? Shares()
    {
        double sum = 0.0;
        for (int k = 0; k < _impulse.Length; k++)
        {
            sum += IsCause((BindingKind)k) ? _impulse[k] : 0.0;
        }

        if (!(sum > 0.0))
        {
            return _lifted > 0.0 ? new BindingShares([(BindingKind.Lifted, 1.0)], 1.0) : null;
        }

        double all = sum;
        (BindingKind Kind, double Share)[] kinds =
        [
            .. _impulse.Select((impulse, k) => ((BindingKind)k, impulse / all)).Where(s => IsCause(s.Item1) && s.Item2 > 0.0).OrderByDescending(s => Weight(s.Item1)),
        ];
        return new BindingShares(kinds, _time > 0.0 ? _lifted / _time : 0.0);
    }

    /// <summary>The kind that set most, without a list: <see cref="BindingKind.Nothing"/> where nothing was commanded.</summary>
    public BindingKind Leading()
    {
        BindingKind leading = _lifted > 0.0 ? BindingKind.Lifted : BindingKind.Nothing;
        double most = 0.0;
        for (int k = 0; k < _impulse.Length; k++)
        {
            if (IsCause((BindingKind)k) && Weight((BindingKind)k) > most)
            {
                (leading, most) = ((BindingKind)k, Weight((BindingKind)k));
            }
        }

        return leading;
    }

    // What more of a kind would add, as a share of the impulse [N s]
    private double Weight(BindingKind kind) => (kind == BindingKind.Battery ? BatteryWeight : 1.0) * _impulse[(int)kind];

    // A wheel in the air or without command gives nothing, and more of nothing changes that.
    private static bool IsCause(BindingKind kind) => kind is not (BindingKind.Nothing or BindingKind.Lifted);
}
