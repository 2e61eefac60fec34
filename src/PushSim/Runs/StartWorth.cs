namespace PushSim.Runs;

/// <summary>What a tenth of a second is worth to the first robot of a shove, beside a tenth more grip or mass: ground by the end of the time. Each is null where a robot tips.</summary>
/// <param name="Reaction">Half of what lies between moving first and moving last by 0.1 s [m].</param>
/// <param name="Grip">What 10 % more friction of its tyres adds where both start together [m].</param>
/// <param name="Mass">What 10 % more mass adds there [m].</param>
/// <param name="IsWithoutLine">Whether the line, which ended one of the shoves, was left out: at the line all gain about as much.</param>
public sealed record StartWorth(double? Reaction, double? Grip, double? Mass, bool IsWithoutLine);
