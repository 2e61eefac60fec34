using System.Diagnostics;
using PushSim.Files;

namespace PushSim.Cli.Bench;

/// <summary>Lines on standard input.</summary>
/// <param name="input">The stream.</param>
internal sealed class InputSource(Stream input) : ILineSource
{
    private const int Block = 1 << 14;

    public void Read(Action<SourceNews> got, CancellationToken cancel)
    {
        byte[] buffer = new byte[Block];
        long start = Stopwatch.GetTimestamp();
        got(new SourceNews(SourceNewsKind.Plugged, 0.0, []));
        try
        {
            for (int n = input.Read(buffer); n > 0 && !cancel.IsCancellationRequested; n = input.Read(buffer))
            {
                got(new SourceNews(SourceNewsKind.Bytes, Stopwatch.GetElapsedTime(start).TotalSeconds, buffer[..n]));
            }
        }
        catch (IOException e)
        {
            got(new SourceNews(SourceNewsKind.Ended, Stopwatch.GetElapsedTime(start).TotalSeconds, [], e.Message));
            return;
        }

        got(new SourceNews(SourceNewsKind.Ended, Stopwatch.GetElapsedTime(start).TotalSeconds, []));
    }
}
