using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Odds;

/// <summary>One of the scenarios whose matches are drawn.</summary>
internal sealed record OddsSide(string Label, DrawableScenario Scenario, ContestKey Contest, FileMatchSource Source, string Fingerprint, ReadResult Read)
{
    public IReadOnlyList<TolerancedValue> Values => Scenario.Values;

    /// <summary>Its matches, once they are played.</summary>
    public IReadOnlyList<MatchEnd> Outcomes { get; set; } = [];
}
