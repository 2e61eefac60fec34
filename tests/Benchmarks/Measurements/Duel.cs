using System.Diagnostics;

namespace PushSim.Benchmarks.Measurements;

/// <summary>Two programs measured in turn, so that both see the same machine, until neither gets cheaper.</summary>
/// <param name="Base">The one that is compared with.</param>
/// <param name="Own">This one.</param>
/// <param name="IsShort">Whether two rounds are enough, and fewer matches.</param>
internal sealed record Duel(Contender Base, Contender Own, bool IsShort)
{
    // Gain that still counts [1]; rounds without one that end it, most rounds [1]; time after which no further round begins [s].
    private const double Gain = 0.99;
    private const int QuietRounds = 3;
    private const int MostRounds = 15;
    private const double Longest = 300.0;
    private const double LongestShort = 40.0;

    /// <summary>Least cost of each over the rounds.</summary>
    /// <param name="arguments">The command.</param>
    public (Cost Base, Cost Own) Least(string arguments) => Least(c => c.Run(arguments).Cost);

    /// <summary>The same of anything that has a cost.</summary>
    public (Cost Base, Cost Own) Least(Func<Contender, Cost> cost)
    {
        long start = Stopwatch.GetTimestamp();
        (Cost before, Cost own) = (new(double.MaxValue, double.MaxValue), new(double.MaxValue, double.MaxValue));
        (int quiet, int least) = (0, IsShort ? 2 : 4);
        for (int round = 0; round < MostRounds && quiet < QuietRounds; round++)
        {
            if (round >= least && Stopwatch.GetElapsedTime(start).TotalSeconds > (IsShort ? LongestShort : Longest))
            {
                break;
            }

            (Cost b, Cost o) = (before.Least(cost(Base)), own.Least(cost(Own)));
            quiet = b.Cpu < Gain * before.Cpu || o.Cpu < Gain * own.Cpu ? 0 : quiet + 1;
            (before, own) = (b, o);
        }

        return (before, own);
    }
}
