namespace PushSim.Cli.Matches;

/// <summary>A file whose rows reach the system one by one, so that a killed process loses none, and the disk every few seconds, so that a power cut loses few.</summary>
/// <param name="file">The file.</param>
/// <param name="sync">Waits until what was written is on the disk.</param>
/// <param name="clock">Time since any start [s].</param>
internal sealed class SyncedFile(Stream file, Action sync, Func<double> clock) : Stream
{
    /// <summary>Seconds from one write to the disk to the next [s].</summary>
    public const double Interval = 5.0;

    private double _last = clock();
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
        file.Flush();
        if (clock() - _last > Interval)
        {
            Flush();
        }
    }

    public override void Flush()
    {
        sync();
        _last = clock();
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
                sync();
            }
        }

        base.Dispose(disposing);
    }
}
