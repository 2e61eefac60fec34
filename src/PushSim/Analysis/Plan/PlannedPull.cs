namespace PushSim.Analysis.Plan;

/// <summary>One pull of a plan.</summary>
/// <param name="Number">Its number over all pulls, from 1.</param>
/// <param name="Block">Its block, from 1: each block has every tyre once.</param>
/// <param name="Tyre">Name of the tyre.</param>
public sealed record PlannedPull(int Number, int Block, string Tyre);
