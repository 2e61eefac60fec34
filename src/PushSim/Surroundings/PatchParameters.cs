namespace PushSim.Surroundings;

/// <summary>Numbers of one floor patch: its sides in floor axes [m] and the multiple of the floor's friction on it [1].</summary>
internal struct PatchParameters<T>
    where T : struct, IReal<T>
{
    public T MinX, MaxX, MinY, MaxY, FrictionScale;
}
