namespace PushSim.Cli.Tests.Bench;

/// <summary>What a cell's board sends of an invented pull: slack, ramp, peak of 620 gf, sliding at 520 gf, slack.</summary>
internal static class CellLines
{
    /// <summary>Readings a second.</summary>
    public const double Rate = 80.0;

    /// <summary>Seven seconds of readings in gram, with noise of a fixed seed.</summary>
    public static IEnumerable<double> Pull(double rate)
    {
        var random = new Random(5);
        for (int i = 0; i < (int)(7.0 * rate); i++)
        {
            double t = i / rate;
            double f = t < 2.0 || t > 5.0 ? 0.0 : t < 2.5 ? 620.0 * (t - 2.0) / 0.5 : 520.0 + (100.0 * Math.Exp(-(t - 2.5) / 0.05));
            yield return f + (random.NextDouble() * 4.0) - 2.0 + (f > 0.0 ? (random.NextDouble() * 12.0) - 6.0 : 0.0);
        }
    }

    /// <summary>Sends a pull. The board's own milliseconds tell the time, so that its seven seconds take none.</summary>
    /// <returns>The board's time behind it [s].</returns>
    public static double Play(Pty pty, double time)
    {
        foreach (double f in Pull(Rate))
        {
            pty.Line(Stamp(time, f));
            time += 1.0 / Rate;
        }

        return time;
    }

    /// <summary>A line of the board.</summary>
    public static string Stamp(double time, double grams) => FormattableString.Invariant($"ms: {1e3 * time:0.0} g: {grams:0.00}");
}
