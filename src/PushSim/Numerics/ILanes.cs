namespace PushSim.Numerics;

/// <summary>A number type whose values are a fixed count of doubles, or of floats, side by side, its lanes. Lanes never mix: every operation of
/// <see cref="IReal{T}"/> gives in each lane the bits that <see cref="R1"/>, or <see cref="F1"/>, gives for that lane's numbers.</summary>
/// <typeparam name="T">The implementing type; exactly <see cref="Lanes"/> doubles or floats, lane 0 first in memory.</typeparam>
internal interface ILanes<T> : IReal<T>
    where T : struct, ILanes<T>, IReal<T>
{
    /// <summary>Number of lanes [1].</summary>
    static abstract int Lanes { get; }

    /// <summary>Whether the processor works on all lanes at once; where it does not, narrower lanes are faster.</summary>
    static abstract bool IsAccelerated { get; }
}
