using PushSim.Analysis.Chance;

namespace PushSim.Words.Terms;

/// <summary>What a shove owes to who moves first, in one line.</summary>
public static class StartWords
{
    /// <summary>The line of one shove.</summary>
    /// <param name="study">The shove in the three orders of starts.</param>
    /// <param name="robot">Name of the first robot.</param>
    /// <param name="opponent">Name of its opponent.</param>
    public static string Of(StartStudy study, string robot, string opponent) =>
        $"start of {robot}: {string.Join(", ", study.Cases.Select(c => $"{When(c.Order)} {End(c, robot, opponent)}"))}; {Worth(study.Worth)}";

    /// <summary>The line of many drawn matches.</summary>
    /// <param name="start">The matches in the three orders of starts.</param>
    /// <param name="robot">Name of the first robot.</param>
    public static string Of(StartOdds start, string robot) =>
        Text($"start of {robot}, on the first {start.Shares.Max(s => s.Tally.Matches + s.Tally.Failed)} of these draws (at most {StartOdds.Most}): {string.Join(", ", start.Shares.Select(s => $"{When(s.Order)} it wins {Share(s.Tally)}"))}; between the middle values {Worth(start.Worth)}");

    private static string Share(Tally t) => t.Matches == 0 ? "in none that was played" : Text($"{100.0 * t.Share(t.Wins):0.#} % (counting error: {100.0 * t.WinInterval.Low:0.#} to {100.0 * t.WinInterval.High:0.#} %)");

    private static string When(StartOrder order) => order switch
    {
        StartOrder.First => Text($"first by {StartShift.Tenth:0.0} s"),
        StartOrder.Together => "together",
        _ => "last",
    };

    private static string End(StartCase c, string robot, string opponent)
    {
        string winner = c.Winner == 0 ? robot : opponent;
        return c.Ending switch
        {
            null => "no run could finish",
            ShoveEnding.Line => Text($"{winner} wins at the line after {c.EndTime:0.00} s"),
            ShoveEnding.Ground => $"{winner} wins by {Metres(Math.Abs(c.GroundGained))}",
            ShoveEnding.Tips when c.Winner >= 0 => $"{winner} wins by a tip",
            ShoveEnding.Tips => "both tip",
            _ => "stalemate",
        };
    }

    private static string Worth(StartWorth w) =>
        w is { Reaction: null, Grip: null, Mass: null } ? "what 0.1 s is worth is not told where a robot tips"
        : $"0.1 s is worth {Metres(w.Reaction)}, 10 % of grip {Metres(w.Grip)}, 10 % of mass {Metres(w.Mass)}{(w.IsWithoutLine ? " (ground when time is up, if no line ended the shove)" : "")}";

    /// <summary>What a tenth more grip or mass is worth, as advice: "10 % more grip is worth 0.12 m of ground, 10 % more mass 0.10 m"; empty where that is not told.</summary>
    public static string Advice(StartWorth w) => w is { Grip: null, Mass: null } ? "" : $"10 % more grip is worth {Metres(w.Grip)} of ground, 10 % more mass {Metres(w.Mass)}, a start 0.1 s earlier {Metres(w.Reaction)}";

    // a millimetre is what the numerics tell
    private static string Metres(double? ground) => ground is not double g ? "unknown (a tip)" : Math.Abs(g) < 0.1 ? PlainNumber.UnsignedZero(Text($"{g:0.000}")) + " m" : Text($"{g:0.00} m");
}
