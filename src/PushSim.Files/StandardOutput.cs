using System.Runtime.InteropServices;

namespace PushSim.Files;

/// <summary>
/// Standard output that says when nobody takes it: .NET's own drops what goes into a closed pipe without a word. Written by the number of the file, so that it goes to the end of
/// what others wrote there meanwhile.
/// </summary>
public sealed class StandardOutput : Stream
{
    private const int Number = 1;
    private const int Interrupted = 4;
    private const int NotNow = 11;
    private const int NotNowElsewhere = 35;
    private const int LookAgainMilliseconds = 5;

    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    /// <summary>Ends the process at once, whatever its threads wait for.</summary>
    /// <param name="code">Its exit code [1].</param>
    public static void EndProcess(int code) => Native.End(code);

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        while (buffer.Length > 0)
        {
            nint took = Native.Write(Number, buffer);
            if (took >= 0)
            {
                buffer = buffer[(int)took..];
                continue;
            }

            switch (Marshal.GetLastPInvokeError())
            {
                case Interrupted:
                    break;
                case NotNow or NotNowElsewhere:
                    Thread.Sleep(LookAgainMilliseconds);
                    break;
                case var error:
                    throw new IOException($"standard output takes no more: {Marshal.GetPInvokeErrorMessage(error)}", error);
            }
        }
    }
}
