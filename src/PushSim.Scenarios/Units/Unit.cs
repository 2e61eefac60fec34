namespace PushSim.Scenarios.Units;

/// <summary>One unit: value in SI = Factor * number + Offset.</summary>
/// <param name="Name">How it is printed.</param>
/// <param name="Factor">SI per unit.</param>
/// <param name="Offset">SI value of zero in this unit.</param>
internal readonly record struct Unit(string Name, double Factor, double Offset = 0.0);
