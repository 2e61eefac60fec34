namespace PushSim.Analysis.Limits;

/// <summary>What 10 % more of a part buys.</summary>
/// <param name="Input">The part.</param>
/// <param name="Output">What it changes.</param>
/// <param name="Base">Value as it is [unit of the output].</param>
/// <param name="Changed">Value with 1.10 times the part [unit of the output].</param>
/// <param name="ChangePercent">The change as a share of the value (of a shove margin: of the own push) [%].</param>
/// <param name="Slope">Derivative by the part's factor, at 1, from dual numbers [unit of the output].</param>
/// <param name="SlopePercent">What the slope alone promises for 10 %, in the same measure [%].</param>
public sealed record Gain(LimitInput Input, LimitOutput Output, double Base, double Changed, double ChangePercent, double Slope, double SlopePercent);
