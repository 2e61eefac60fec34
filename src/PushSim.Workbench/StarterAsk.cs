namespace PushSim.Workbench;

/// <summary>What a starter is made of; a text that is empty takes what is usual.</summary>
/// <param name="Kind">What the robot does, a word of `new`.</param>
/// <param name="Mass">Its mass with a unit.</param>
/// <param name="Wheels">Number of wheels.</param>
/// <param name="Motor">A motor of the shelf, or its class.</param>
/// <param name="Tyre">A material of the shelf.</param>
public sealed record StarterAsk(string Kind, string Mass, string Wheels, string Motor, string Tyre);
