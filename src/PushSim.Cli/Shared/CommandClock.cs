using System.Diagnostics;

namespace PushSim.Cli.Shared;

/// <summary>How long the command has worked, from its command line on: the one clock of what text and JSON tell of the whole of it.</summary>
internal sealed class CommandClock : IDisposable
{
    private static readonly AsyncLocal<CommandClock?> s_now = new();

    private readonly CommandClock? _outer;
    private readonly long _begin = Stopwatch.GetTimestamp();

    private CommandClock(CommandClock? outer) => _outer = outer;

    /// <summary>Time so far; zero where no command works [ms].</summary>
    public static double Milliseconds => s_now.Value is CommandClock now ? Stopwatch.GetElapsedTime(now._begin).TotalMilliseconds : 0.0;

    /// <summary>Begins a command; one that asks another goes on with its own clock after that one's end.</summary>
    public static CommandClock Begin() => s_now.Value = new CommandClock(s_now.Value);

    /// <inheritdoc/>
    public void Dispose() => s_now.Value = _outer;
}
