namespace PushSim.Files;

/// <summary>How a lock is asked for.</summary>
/// <param name="What">What it guards, as messages name it.</param>
/// <param name="Command">The command line that asks.</param>
/// <param name="Tell">Tells a person, in a sentence without end.</param>
/// <param name="Cancel">Ends the wait.</param>
public sealed record LockAsk(string What, string Command, Action<string> Tell, CancellationToken Cancel)
{
    private const double UsualWait = 60.0;
    private const double UsualTellAfter = 0.1;

    private static readonly AsyncLocal<double?> s_patience = new();

    /// <summary>Seconds that are waited at most [s]. Six runs at once on one folder end within it; a campaign of hours does not, and is told.</summary>
    public double Wait { get; init; } = s_patience.Value ?? UsualWait;

    /// <summary>Seconds of waiting after which it is told [s]. Parts of a campaign wait for each other by design, and not long.</summary>
    public double TellAfter { get; init; } = UsualTellAfter;

    /// <summary>Sets the wait of the code that the caller runs [s]; null: the usual one.</summary>
    /// <param name="seconds">The wait [s].</param>
    public static void Patience(double? seconds) => s_patience.Value = seconds;
}
