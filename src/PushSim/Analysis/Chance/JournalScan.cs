using System.Security.Cryptography;
using System.Text;

namespace PushSim.Analysis.Chance;

/// <summary>A journal read from its first line to its last: what it holds, what of it is refused, and where it goes on. Its rows are not kept, so that its length does not matter.</summary>
internal sealed class JournalScan
{
    // Places that are told, and matches that may come twice [1].
    private const int MostTold = 20;
    private const int MostTwice = 100_000;

    private readonly JournalHead _head;
    private readonly IReadOnlyList<uint> _keys;
    private readonly IMatchWords _words;
    private readonly List<JournalProblem> _problems = [];
    private readonly Dictionary<(int Contest, long Number), long> _twice = [];

    private JournalScan(JournalHead head, IReadOnlyList<uint> keys, IMatchWords words)
    {
        (_head, _keys, _words) = (head, keys, words);
        Done = [.. keys.Select(_ => new NumberSet())];
    }

    /// <summary>Why it is of something else.</summary>
    public JournalMisfit Misfit { get; private set; }

    /// <summary>What is refused, the first places.</summary>
    public IReadOnlyList<JournalProblem> Problems => _problems;

    /// <summary>How many places are refused [1].</summary>
    public long Refused { get; private set; }

    /// <summary>Places of the finished matches in the part, by contest.</summary>
    public NumberSet[] Done { get; }

    /// <summary>Matches that stand there with different results.</summary>
    public HashSet<(int Contest, long Number)> Contradicting { get; } = [];

    /// <summary>Rows that are there [1].</summary>
    public long Rows { get; private set; }

    /// <summary>Bytes up to the end of the last whole line [1].</summary>
    public long Length { get; private set; }

    /// <summary>Matches that its closed sessions played [1], and the time that they took [s].</summary>
    public (long Played, double Seconds) Speed { get; private set; }

    /// <summary>Its last line, if that closes it.</summary>
    public JournalClosing? Closing { get; private set; }

    /// <summary>Of all whole lines.</summary>
    public IncrementalHash Hash { get; } = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    /// <summary>Reads a journal.</summary>
    /// <param name="open">Opens it.</param>
    /// <param name="head">The first line that it must have.</param>
    /// <param name="keys">Keys of the contests.</param>
    /// <param name="words">Keys and words.</param>
    /// <param name="take">Takes each match that is there for the first time, in the order of the rows; null for nobody.</param>
    public static JournalScan Of(Func<Stream> open, JournalHead head, IReadOnlyList<uint> keys, IMatchWords words, Action<int, MatchEnd>? take = null)
    {
        var scan = new JournalScan(head, keys, words);
        using (Stream stream = open())
        {
            scan.Read(stream, take);
        }

        if (scan._twice.Count > 0)
        {
            using Stream again = open();
            scan.Compare(again);
        }

        return scan;
    }

    /// <summary>Writes the good rows of a journal with refused ones anew.</summary>
    /// <param name="from">The journal.</param>
    /// <param name="to">Takes a journal without a closing line.</param>
    public void WriteGood(Stream from, Stream to)
    {
        using var writer = new JournalWriter(to, _words, _keys, null);
        writer.Begin(_head);
        NumberSet[] seen = [.. _keys.Select(_ => new NumberSet())];
        var lines = new JournalLines(from);
        while (lines.Next(out ReadOnlySpan<byte> line))
        {
            if (lines.IsWhole && JournalRow.Read(line, _keys, _head.Part, _words, out int contest, out MatchEnd end) is null && !Contradicting.Contains((contest, end.Number)) && seen[contest].Add(_head.Part.PlaceOf(end.Number)))
            {
                writer.Add(contest, end);
            }
        }
    }

    private void Read(Stream stream, Action<int, MatchEnd>? take)
    {
        var lines = new JournalLines(stream);
        while (lines.Next(out ReadOnlySpan<byte> line))
        {
            string text = lines.Number == 1 ? Encoding.UTF8.GetString(line) : "";
            if (!lines.IsWhole && (lines.Number > 1 || _head.Text.StartsWith(text, StringComparison.Ordinal)))
            {
                // cut off as it was written
                return;
            }

            Closing = null;
            if (lines.Number == 1)
            {
                Misfit = _head.Misfit(text);
                if (Misfit != JournalMisfit.None)
                {
                    return;
                }
            }
            else if (lines.Number == 2)
            {
                RefuseIf(!line.SequenceEqual(Encoding.UTF8.GetBytes(JournalRow.Columns)), 2, JournalFault.Columns);
            }
            else if (line.Length > 0 && line[0] == '#')
            {
                Close(lines.Number, Encoding.UTF8.GetString(line));
            }
            else
            {
                Row(lines.Number, line, take);
            }

            Hash.AppendData(line);
            Hash.AppendData("\n"u8);

            // both first lines come in one write, so one alone was cut off
            Length = lines.Number > 1 ? lines.End : 0;
        }
    }

    private void Row(long number, ReadOnlySpan<byte> line, Action<int, MatchEnd>? take)
    {
        if (JournalRow.Read(line, _keys, _head.Part, _words, out int contest, out MatchEnd end) is JournalFault fault)
        {
            RefuseIf(true, number, fault, end.Number);
            return;
        }

        Rows++;
        if (Done[contest].Add(_head.Part.PlaceOf(end.Number)))
        {
            take?.Invoke(contest, end);
        }
        else
        {
            RefuseIf(_twice.Count >= MostTwice, number, JournalFault.TooManyTwice);
            _ = _twice.Count < MostTwice && _twice.TryAdd((contest, end.Number), 0);
        }
    }

    private void Close(long number, string line)
    {
        Closing = JournalClosing.Read(line);
        if (Closing is not JournalClosing closing)
        {
            RefuseIf(true, number, JournalFault.Closing);
            return;
        }

        Speed = (Speed.Played + closing.Played, Speed.Seconds + closing.Seconds);
        RefuseIf(closing.Rows != Rows, number, JournalFault.ClosedRows, closing.Rows, Rows);
        RefuseIf(closing.Rows == Rows && closing.Hash != JournalClosing.HashOf(Hash), number, JournalFault.ClosedLines);
    }

    // Where a match stands twice the two must agree
    private void Compare(Stream stream)
    {
        Dictionary<(int Contest, long Number), MatchEnd> first = [];
        var lines = new JournalLines(stream);
        while (lines.Next(out ReadOnlySpan<byte> line))
        {
            if (!lines.IsWhole || JournalRow.Read(line, _keys, _head.Part, _words, out int contest, out MatchEnd end) is not null || !_twice.TryGetValue((contest, end.Number), out long at))
            {
                continue;
            }

            if (at == 0)
            {
                _twice[(contest, end.Number)] = lines.Number;
                first[(contest, end.Number)] = end;
            }
            else if (first[(contest, end.Number)] != end)
            {
                Contradicting.Add((contest, end.Number));
                RefuseIf(true, lines.Number, JournalFault.Contradiction, end.Number, at);
            }
        }
    }

    private void RefuseIf(bool isWrong, long line, JournalFault fault, long number = 0, long other = 0)
    {
        if (!isWrong)
        {
            return;
        }

        Refused++;
        if (_problems.Count < MostTold)
        {
            _problems.Add(new JournalProblem(_head.Name, line, fault, number, other));
        }
    }
}
