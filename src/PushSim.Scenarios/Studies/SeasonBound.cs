namespace PushSim.Scenarios.Studies;

/// <summary>What pulls at the limit of the motors tell: static friction is at least that.</summary>
/// <param name="Tyre">The tyre.</param>
/// <param name="State">State of the floor.</param>
/// <param name="AtLeast">Least static friction [1].</param>
/// <param name="Pulls">Pulls that tell it [1].</param>
/// <param name="Robot">The robot whose motors set them.</param>
/// <param name="MotorForce">What its motors give at the floor [N].</param>
public sealed record SeasonBound(string Tyre, string State, double AtLeast, int Pulls, string Robot, double MotorForce);
