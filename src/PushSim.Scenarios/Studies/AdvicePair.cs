using PushSim.Analysis.Statistics;

namespace PushSim.Scenarios.Studies;

/// <summary>Two changes that together bring more or less than the sum of both.</summary>
/// <param name="First">The one that brings more by itself.</param>
/// <param name="Second">The other.</param>
/// <param name="Together">Win share that both add at once [1].</param>
/// <param name="Beyond">What that is beyond the sum of both [1].</param>
/// <param name="BeyondFirst">What that is beyond the first alone, match by match [1].</param>
public sealed record AdvicePair(AdviceChange First, AdviceChange Second, Interval Together, Interval Beyond, Interval BeyondFirst);
