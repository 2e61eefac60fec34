namespace PushSim.Analysis.Chance;

/// <summary>The lines of a stream one by one, however long it is. The end of a line is a line feed, with or without a carriage return before it.</summary>
internal sealed class JournalLines(Stream stream)
{
    // Bytes read at once, and of the longest line that is taken for one [1].
    private const int Block = 1 << 15;
    private const int Longest = 1 << 16;

    private byte[] _buffer = new byte[Block];
    private int _from;
    private int _to;
    private long _base;

    /// <summary>Number of the line, from 1 [1].</summary>
    public long Number { get; private set; }

    /// <summary>Bytes up to the end of the line [1].</summary>
    public long End { get; private set; }

    /// <summary>Whether its end was there; without one it was cut off.</summary>
    public bool IsWhole { get; private set; }

    /// <summary>The next line without its end; false at the end of the stream. It holds until the next call.</summary>
    public bool Next(out ReadOnlySpan<byte> line)
    {
        int searched = 0;
        while (true)
        {
            int found = _buffer.AsSpan(_from + searched, _to - _from - searched).IndexOf((byte)'\n');
            int length = found < 0 ? _to - _from : searched + found;
            if (found < 0 && length < Longest && Fill())
            {
                searched = length;
                continue;
            }

            line = _buffer.AsSpan(_from, length);
            IsWhole = found >= 0;
            int whole = length + (IsWhole ? 1 : 0);
            if (whole == 0)
            {
                return false;
            }

            Number++;
            _from += whole;
            End = _base + _from;
            line = line.Length > 0 && line[^1] == '\r' && IsWhole ? line[..^1] : line;
            return true;
        }
    }

    private bool Fill()
    {
        _buffer.AsSpan(_from, _to - _from).CopyTo(_buffer);
        _base += _from;
        (_from, _to) = (0, _to - _from);
        if (_to == _buffer.Length)
        {
            Array.Resize(ref _buffer, 2 * _buffer.Length);
        }

        int read = stream.Read(_buffer, _to, _buffer.Length - _to);
        _to += read;
        return read > 0;
    }
}
