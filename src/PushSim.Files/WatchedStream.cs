using System.Security.Cryptography;

namespace PushSim.Files;

/// <summary>An open file whose reads and writes pass the door, and which can tell the hash of what was written.</summary>
public sealed class WatchedStream : Stream
{
    private readonly FileStream _file;
    private readonly string _path;
    private readonly DiskWatch? _watch;
    private readonly IncrementalHash? _hash;

    internal WatchedStream(FileStream file, string path, DiskWatch? watch)
    {
        (_file, _path, _watch) = (file, path, watch);
        _hash = file.CanWrite ? IncrementalHash.CreateHash(HashAlgorithmName.SHA256) : null;
    }

    /// <inheritdoc/>
    public override bool CanRead => _file.CanRead;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => _file.CanWrite;

    /// <inheritdoc/>
    public override long Length => _file.Length;

    /// <inheritdoc/>
    public override long Position { get => _file.Position; set => throw new NotSupportedException(); }

    /// <summary>Hash of all that was written through this stream.</summary>
    public string Hash => Disk.Hex(_hash!.GetCurrentHash());

    /// <summary>Waits until all that was written is on the disk.</summary>
    public void Sync()
    {
        _file.Flush();
        _watch?.Before(DiskAct.Sync, _path);
        _file.Flush(flushToDisk: true);
    }

    /// <inheritdoc/>
    public override void Flush() => _file.Flush();

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override int Read(Span<byte> buffer)
    {
        int passes = _watch?.Bytes(DiskAct.Read, _path, buffer.Length) ?? buffer.Length;
        return _file.Read(buffer[..passes]);
    }

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        int passes = _watch?.Bytes(DiskAct.Write, _path, buffer.Length) ?? buffer.Length;
        _file.Write(buffer[..passes]);
        if (passes < buffer.Length)
        {
            throw new IOException("no space left");
        }

        _hash?.AppendData(buffer);
    }

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _file.Dispose();
            _hash?.Dispose();
        }

        base.Dispose(disposing);
    }
}
