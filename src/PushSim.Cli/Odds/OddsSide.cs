using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Odds;

/// <summary>One of the scenarios whose matches are drawn.</summary>
internal sealed record OddsSide(string Label, DrawableScenario Scenario, ContestKey Contest, FileMatchSource Source, DrawableResult Drawable)
{
    public ReadResult Read => Drawable.Read;

    public IReadOnlyList<TolerancedValue> Values => Scenario.Values;

    public string Fingerprint => Scenarios.Drawing.Fingerprint.Of(Drawable, Source);

    /// <summary>Its matches by number, once they are played; of very many each going through reads them anew.</summary>
    public IEnumerable<MatchEnd> Outcomes { get; set; } = [];

    /// <summary>Their counts.</summary>
    public Tally Tally { get; set; } = new();
}
