namespace PushSim.Cli.Plan;

/// <summary>What a plan is asked for.</summary>
/// <param name="Tyres">Names of the tyres.</param>
/// <param name="Difference">Share of the friction that matters [1].</param>
/// <param name="Spread">Share of the friction from pull to pull [1]; null: from the earlier readings or the usual one.</param>
/// <param name="From">Earlier readings or log; null if none.</param>
/// <param name="Load">Load on the tested tyres as the user wrote it; null if not given.</param>
/// <param name="LoadNewton">The same [N].</param>
/// <param name="Power">Share of tests that find the difference [1].</param>
/// <param name="Seed">Of the order.</param>
internal sealed record PlanRequest(IReadOnlyList<string> Tyres, double Difference, double? Spread, string? From, string? Load, double? LoadNewton, double Power, int Seed);
