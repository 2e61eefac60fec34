using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>A pull that does not fit the others of its tyre.</summary>
/// <param name="Tyre">Name of the tyre.</param>
/// <param name="Pull">Which of its pulls, from 1.</param>
/// <param name="Friction">Its friction [1].</param>
/// <param name="Test">Grubbs' test.</param>
public sealed record OddPull(string Tyre, int Pull, double Friction, GrubbsTest Test);
