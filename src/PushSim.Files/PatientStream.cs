namespace PushSim.Files;

/// <summary>A pipe or a device whose other end may be silent for ever: a wait for it ends at an interrupt, and so does an endless one at a limit.</summary>
internal sealed class PatientStream(string path, long most, CancellationToken cancel) : Stream
{
    private FileStream? _file;
    private long _read;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => _read; set => throw new NotSupportedException(); }

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        // the other thread keeps bytes of its own: an interrupt leaves it behind, waiting
        byte[] bytes = new byte[count];
        Task<int> reading = Task.Factory.StartNew(() => (_file ??= new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 0)).Read(bytes, 0, count), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            reading.Wait(cancel);
        }
        catch (AggregateException e) when (e.InnerException is not null)
        {
            throw new IOException(e.InnerException.Message, e.InnerException);
        }

        int got = reading.Result;
        _read += got;
        if (_read > most)
        {
            throw new IOException(string.Create(CultureInfo.InvariantCulture, $"more than {most} bytes came from a pipe or device"));
        }

        Buffer.BlockCopy(bytes, 0, buffer, offset, got);
        return got;
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _file?.Dispose();
        }

        base.Dispose(disposing);
    }
}
