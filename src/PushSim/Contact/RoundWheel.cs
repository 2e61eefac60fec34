namespace PushSim.Contact;

/// <summary>A wheel as part of a body's shape: a cylinder about an axle along the body's y axis.</summary>
/// <param name="X">Hub from the centre of mass, forward [m].</param>
/// <param name="Y">Hub from the centre of mass, left [m].</param>
/// <param name="Z">Hub from the centre of mass, up [m].</param>
/// <param name="Radius">Radius [m].</param>
/// <param name="HalfWidth">Half its width [m].</param>
/// <param name="Stiffness">Of its tyre, pressed by a flat face [N/m].</param>
/// <param name="Friction">Of its tread on another body [1].</param>
internal sealed record RoundWheel(double X, double Y, double Z, double Radius, double HalfWidth, double Stiffness, double Friction);
