namespace PushSim.Runs;

/// <summary>What the closer look at a run cost, and what it left out.</summary>
/// <param name="Evaluations">Evaluations of the right-hand side, beside those of the run itself [1].</param>
/// <param name="Allowed">Evaluations that it was allowed; null without a limit [1].</param>
/// <param name="LeftOut">Parts that would have taken more.</param>
public sealed record LookCost(long Evaluations, long? Allowed, IReadOnlyList<LookPart> LeftOut);
