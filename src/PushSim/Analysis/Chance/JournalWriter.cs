using System.Security.Cryptography;
using System.Text;

namespace PushSim.Analysis.Chance;

/// <summary>Adds rows to a journal, each whole in one write as its match ends.</summary>
/// <param name="stream">Where to; it stands at the end.</param>
/// <param name="words">Keys and words.</param>
/// <param name="keys">Keys of the contests.</param>
/// <param name="scan">What is there already; null for a new one.</param>
internal sealed class JournalWriter(Stream stream, IMatchWords words, IReadOnlyList<uint> keys, JournalScan? scan) : IDisposable
{
    private readonly IncrementalHash _hash = scan?.Hash ?? IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private byte[] _line = [];
    private long _rows = scan?.Rows ?? 0;
    private bool _isBroken;

    /// <summary>Writes the first lines.</summary>
    public void Begin(JournalHead head)
    {
        Write(head.Text + "\n" + JournalRow.Columns);
    }

    /// <summary>Adds a match.</summary>
    public void Add(int contest, in MatchEnd end)
    {
        Write(JournalRow.Text(contest, end, words, keys[contest]));
        _rows++;
    }

    /// <summary>Closes the session.</summary>
    /// <param name="isEnd">Whether all matches of the part are there.</param>
    /// <param name="matches">Matches of the campaign [1].</param>
    /// <param name="played">Matches that the session played [1].</param>
    /// <param name="seconds">Time that they took [s].</param>
    public void Close(bool isEnd, long matches, long played, double seconds) => Write(new JournalClosing(isEnd, matches, _rows, played, seconds, JournalClosing.HashOf(_hash)).Text);

    /// <inheritdoc/>
    public void Dispose()
    {
        stream.Dispose();
        _hash.Dispose();
    }

    private void Write(string text)
    {
        if (_isBroken)
        {
            // half a line may stand at the end: the next start cuts it off, and nothing may come after it
            return;
        }

        int most = Encoding.UTF8.GetMaxByteCount(text.Length) + 1;
        _line = _line.Length < most ? new byte[most] : _line;
        int length = Encoding.UTF8.GetBytes(text, _line);
        _line[length++] = (byte)'\n';
        _isBroken = true;
        stream.Write(_line, 0, length);
        _isBroken = false;
        _hash.AppendData(_line, 0, length);
    }
}
