namespace PushSim.Analysis.Chance;

/// <summary>The matches of one contest in the order of their numbers, straight from a journal that was looked through before. Rows come nearly in order, so few wait for their turn.</summary>
internal static class JournalReader
{
    /// <summary>The matches below an end.</summary>
    /// <param name="open">Opens the journal.</param>
    /// <param name="contest">Number of the contest, from 0 [1].</param>
    /// <param name="keys">Keys of the contests.</param>
    /// <param name="part">Its numbers.</param>
    /// <param name="done">Places that it holds of this contest.</param>
    /// <param name="end">The one after the last number [1].</param>
    /// <param name="words">Keys and words.</param>
    public static IEnumerable<MatchEnd> InOrder(Func<Stream> open, int contest, IReadOnlyList<uint> keys, PartNumbers part, NumberSet done, long end, IMatchWords words)
    {
        using Stream stream = open();
        var lines = new JournalLines(stream);
        var waiting = new PriorityQueue<MatchEnd, long>();
        foreach (long place in done.Below(part.Count(end)))
        {
            long number = part.NumberAt(place);
            while (!waiting.TryPeek(out _, out long first) || first != number)
            {
                if (!Next(lines, contest, keys, part, words, out MatchEnd row))
                {
                    throw new IOException(string.Create(CultureInfo.InvariantCulture, $"{JournalHead.NameOf(part)} has no match {number} any more: it was changed while it was read"));
                }

                if (row.Number >= number && row.Number < end && done.Contains(part.PlaceOf(row.Number)))
                {
                    waiting.Enqueue(row, row.Number);
                }
            }

            yield return waiting.Dequeue();
            while (waiting.TryPeek(out _, out long again) && again == number)
            {
                waiting.Dequeue();
            }
        }
    }

    // The next row of the contest
    private static bool Next(JournalLines lines, int contest, IReadOnlyList<uint> keys, PartNumbers part, IMatchWords words, out MatchEnd row)
    {
        Span<byte> start = stackalloc byte[12];
        _ = contest.TryFormat(start, out int digits, provider: CultureInfo.InvariantCulture);
        start[digits++] = (byte)',';
        while (lines.Next(out ReadOnlySpan<byte> line))
        {
            if (line.StartsWith(start[..digits]) && JournalRow.Read(line, keys, part, words, out _, out row) is null)
            {
                return true;
            }
        }

        row = default;
        return false;
    }
}
