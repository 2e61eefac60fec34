namespace PushSim.Runs;

/// <summary>How much of a push a wheel was off the floor.</summary>
/// <param name="Wheel">Its name.</param>
/// <param name="Share">Share of the time since the first touch [1].</param>
/// <param name="LiftOffs">How often it left the floor in it [1].</param>
/// <param name="Hops">Whether it hops: off the floor again and again, never for long.</param>
public sealed record WheelAir(string Wheel, double Share, int LiftOffs, bool Hops);
