namespace PushSim.Scenarios.Keys;

/// <summary>How a record gives and takes the value of a key, where that is one value of one record.</summary>
/// <typeparam name="T">The record.</typeparam>
/// <param name="Get">The value that a record has, in SI; of a flag 0 or 1; null for none.</param>
/// <param name="Put">The record with that value.</param>
/// <param name="IsReadApart">True if a reader finds the value in a way of its own, since other keys give it too.</param>
public sealed record KeyRow<T>(Func<T, double?> Get, Func<T, double, T> Put, bool IsReadApart);
