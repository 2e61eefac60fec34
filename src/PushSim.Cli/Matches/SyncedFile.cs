using System.Diagnostics;

namespace PushSim.Cli.Matches;

/// <summary>A file whose rows reach the system one by one, so that a killed process loses none, and the disk every few seconds, so that a power cut loses few.</summary>
internal sealed class SyncedFile(FileStream file) : Stream
{
    /// <summary>Seconds from one write to the disk to the next [s].</summary>
    public const double Interval = 5.0;

    private long _last = Stopwatch.GetTimestamp();
    private bool _isClosed;

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => file.Length;

    public override long Position { get => file.Position; set => throw new NotSupportedException(); }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        file.Write(buffer);
        if (Stopwatch.GetElapsedTime(_last).TotalSeconds > Interval)
        {
            Flush();
        }
    }

    public override void Flush()
    {
        file.Flush(flushToDisk: true);
        _last = Stopwatch.GetTimestamp();
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing && !_isClosed)
        {
            _isClosed = true;
            using (file)
            {
                file.Flush(flushToDisk: true);
            }
        }

        base.Dispose(disposing);
    }
}
