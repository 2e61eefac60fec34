using PushSim.Scenarios.Scenes;

namespace PushSim.Scenarios.Drawing;

/// <summary>What opening a scenario for draws gave.</summary>
/// <param name="Read">The files as read: complaints, notes, inputs.</param>
/// <param name="Scenario">The scenario; null if there was any error.</param>
public sealed record DrawableResult(ReadResult Read, DrawableScenario? Scenario);
