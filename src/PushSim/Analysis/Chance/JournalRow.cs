using System.Numerics;
using System.Text;

namespace PushSim.Analysis.Chance;

/// <summary>A row of a journal: number of the contest, the match, key of the contest (scenario, seed and label), and CRC-32C (Castagnoli) of all that stands before it.</summary>
internal static class JournalRow
{
    /// <summary>Second line of a journal.</summary>
    public const string Columns = "contest," + MatchRow.Columns + ",contest_key,checksum";

    // Hexadecimal digits of a key and of a checksum, and both with a comma before [1].
    private const int Digits = 8;
    private const int Tail = 2 * (Digits + 1);

    /// <summary>The row without a line end.</summary>
    public static string Text(int contest, in MatchEnd end, IMatchWords words, uint key)
    {
        string row = string.Create(CultureInfo.InvariantCulture, $"{contest},{MatchRow.Text(end, words)},{key:x8}");
        return string.Create(CultureInfo.InvariantCulture, $"{row},{Checksum(Encoding.UTF8.GetBytes(row)):x8}");
    }

    /// <summary>Reads a row.</summary>
    /// <param name="line">The row without its end.</param>
    /// <param name="keys">Keys of the contests.</param>
    /// <param name="part">The numbers that it may have.</param>
    /// <param name="words">Keys and words.</param>
    /// <param name="contest">Its contest, from 0 [1].</param>
    /// <param name="end">The match.</param>
    /// <returns>Why it is refused; null if it is not.</returns>
    public static JournalFault? Read(ReadOnlySpan<byte> line, IReadOnlyList<uint> keys, PartNumbers part, IMatchWords words, out int contest, out MatchEnd end)
    {
        (contest, end) = (-1, default);
        if (line.Length < Tail || line[^(Digits + 1)] != ',' || line[^Tail] != ',')
        {
            return JournalFault.NoRow;
        }

        string text = Encoding.UTF8.GetString(line);
        int comma = text.IndexOf(',', StringComparison.Ordinal);
        if (!int.TryParse(text.AsSpan(0, comma), NumberStyles.None, CultureInfo.InvariantCulture, out contest) || comma + 1 > text.Length - Tail)
        {
            return JournalFault.NoRow;
        }

        if (MatchRow.Read(text.AsSpan()[(comma + 1)..^Tail], words, out JournalFault fault) is not MatchEnd found)
        {
            return fault;
        }

        end = found;
        bool isSound = uint.TryParse(text.AsSpan()[^Digits..], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out uint sum) && sum == Checksum(line[..^(Digits + 1)]);
        bool hasKey = uint.TryParse(text.AsSpan()[^(Tail - 1)..^(Digits + 1)], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out uint key);
        return !isSound || !hasKey ? JournalFault.Checksum
            : contest >= keys.Count || key != keys[contest] ? JournalFault.Contest
            : !part.Holds(found.Number) ? JournalFault.Part
            : null;
    }

    private static uint Checksum(ReadOnlySpan<byte> bytes)
    {
        uint crc = uint.MaxValue;
        for (; bytes.Length >= sizeof(ulong); bytes = bytes[sizeof(ulong)..])
        {
            crc = BitOperations.Crc32C(crc, System.Buffers.Binary.BinaryPrimitives.ReadUInt64LittleEndian(bytes));
        }

        foreach (byte b in bytes)
        {
            crc = BitOperations.Crc32C(crc, b);
        }

        return ~crc;
    }
}
