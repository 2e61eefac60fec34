namespace PushSim.Simulation;

/// <summary>One point of a timeline. Between points commands are held (jump at each point) unless <see cref="Ramp"/>.</summary>
/// <param name="Time">When [s].</param>
/// <param name="Throttle">Forward command, -1..1 [1].</param>
/// <param name="Turn">Turn command, -1..1, positive turns left (counter-clockwise) [1].</param>
/// <param name="Ramp">True: reached by a straight line from the point before.</param>
public sealed record CommandPoint(double Time, double Throttle, double Turn, bool Ramp = false);
