namespace PushSim.Analysis.Chance;

/// <summary>A drawn value before and after a record of real matches.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Mean">Mean before [unit of the value].</param>
/// <param name="Deviation">Standard deviation before [unit of the value].</param>
/// <param name="After">Mean after [unit of the value].</param>
/// <param name="DeviationAfter">Standard deviation after [unit of the value].</param>
public sealed record LearnedValue(string Name, double Mean, double Deviation, double After, double DeviationAfter);
