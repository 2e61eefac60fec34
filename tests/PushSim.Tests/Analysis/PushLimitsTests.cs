using PushSim.Analysis;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>What limits a push, out of made-up histories with one sample a millisecond.</summary>
public class PushLimitsTests
{
    private const double Start = 0.1;
    private const double Change = 0.5;

    // a tyre at its grip for four of five milliseconds holds the push, though each of its stretches is short: it is not the one before that goes on;
    // the sample before the command acts, and a short slide, are no stretches of their own
    [Fact]
    public void Flicker_counts_as_what_holds_most_of_it_and_short_stretches_as_their_neighbours()
    {
        RunHistory history = Made(i => (i > 500 && i % 5 != 0) || i is > 300 and <= 315);
        IReadOnlyList<LimitSpan> spans = PushLimits.Find(history, Start);
        Assert.Equal([PushLimit.Motors, PushLimit.Tyres], spans.Select(s => s.Limit));
        Assert.Equal(Start, spans[0].From);
        Assert.Equal(spans[0].To, spans[1].From);
        Assert.Equal(Change, spans[1].From, 0.02);
        Assert.Equal(history.Time[^1], spans[1].To);
        Assert.Equal(PushLimit.Tyres, PushLimits.Mostly(spans, Change));
        Assert.Equal(PushLimit.Motors, PushLimits.Mostly([spans[0]], double.NaN));
    }

    private static RunHistory Made(Func<int, bool> slides)
    {
        ScenarioSettings scenario = TestRobots.Launch();
        double[] time = [.. Enumerable.Range(0, 1001).Select(i => 0.001 * i)];
        double[] Each(Func<int, double> value) => [.. time.Select((_, i) => value(i))];
        List<Channel> channels =
        [
            new("battery_open_circuit_voltage_v", "", "V", Each(_ => 12.0)), new("battery_voltage_v", "", "V", Each(_ => 11.0)),
            .. scenario.Robot.Wheels.SelectMany(w => new Channel[]
            {
                new($"wheel_{Slug.Of(w.Name)}_load_n", "", "N", Each(_ => 3.3)), new($"wheel_{Slug.Of(w.Name)}_sliding", "", "1", Each(i => slides(i) ? 1.0 : 0.0)),
            }),
            .. scenario.Robot.Controllers.SelectMany(c => new Channel[]
            {
                new("command_" + Slug.Of(c.Name), "", "1", Each(i => i > 100 ? 1.0 : 0.0)), new($"controller_{Slug.Of(c.Name)}_limiting", "", "1", Each(_ => 0.0)),
            }),
        ];
        return new RunHistory(scenario, time, channels);
    }
}
