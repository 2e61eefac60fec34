namespace PushSim.Numerics;

/// <summary>Equations that hold numbers.</summary>
internal interface INumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Shows all their numbers, in an order that only their shape decides.</summary>
    void Show(NumberWalk<T> walk);
}
