using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PushSim.Numerics;

/// <summary>One accepted step of one lane: values and slopes at both ends.</summary>
internal readonly struct LaneStep
{
    private readonly double[] _store;
    private readonly int _y0, _k0, _y1, _k1, _lanes;
    private readonly bool _isSingle;

    internal LaneStep(double[] store, bool isSingle, int lane, int y0, int k0, int y1, int k1, int lanes, double t0, double t1)
    {
        _store = store;
        _isSingle = isSingle;
        _lanes = lanes;
        (_y0, _k0, _y1, _k1) = (y0 + lane, k0 + lane, y1 + lane, k1 + lane);
        (T0, T1) = (t0, t1);
    }

    /// <summary>Start of the step [s].</summary>
    public double T0 { get; }

    /// <summary>End of the step [s].</summary>
    public double T1 { get; }

    /// <summary>A component at the start, in its own unit.</summary>
    /// <param name="component">Its index [1].</param>
    public double Y0(int component) => At(_y0 + (component * _lanes));

    /// <summary>A component at the end, in its own unit.</summary>
    /// <param name="component">Its index [1].</param>
    public double Y1(int component) => At(_y1 + (component * _lanes));

    /// <summary>Its derivative at the start, in its unit per second.</summary>
    /// <param name="component">Its index [1].</param>
    public double Slope0(int component) => At(_k0 + (component * _lanes));

    /// <summary>Its derivative at the end, in its unit per second.</summary>
    /// <param name="component">Its index [1].</param>
    public double Slope1(int component) => At(_k1 + (component * _lanes));

    // a store of floats has two in each double
    private double At(int place) => _isSingle ? Unsafe.Add(ref Unsafe.As<double, float>(ref MemoryMarshal.GetArrayDataReference(_store)), place) : _store[place];
}
