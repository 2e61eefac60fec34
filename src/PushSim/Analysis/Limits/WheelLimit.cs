using PushSim.Binding;

namespace PushSim.Analysis.Limits;

/// <summary>What one wheel can give and hold as the robot pulls at standstill or, where it rears up before it pulls with all it has, at that moment; where no steady pull was found, as its tyres break away.</summary>
/// <param name="Name">The wheel.</param>
/// <param name="Axle">Number of its axle, from the front, from 0 [1].</param>
/// <param name="IsDriven">Whether motors turn it.</param>
/// <param name="Load">Load that it carries while the robot pulls [N].</param>
/// <param name="RestLoad">Load at rest [N].</param>
/// <param name="MotorForce">What its motors can give at the floor; a drive's force is shared over its wheels by load [N].</param>
/// <param name="PeakForce">What its tyre holds as it breaks away [N].</param>
/// <param name="SlidingForce">What it holds sliding fast [N].</param>
/// <param name="Force">What it gives in the steady pull [N]; below zero for a skid, which creeps forward and is dragged along; NaN where there is none or it was not found.</param>
/// <param name="SpinSpeed">Speed of its surface in the steady pull, 0 stalled [m/s]; NaN where there is none or it was not found.</param>
/// <param name="Binding">What binds it in the steady pull; null for a wheel without motors and where there is no steady pull.</param>
public sealed record WheelLimit(
    string Name, int Axle, bool IsDriven, double Load, double RestLoad, double MotorForce, double PeakForce, double SlidingForce, double Force, double SpinSpeed,
    BindingKind? Binding);
