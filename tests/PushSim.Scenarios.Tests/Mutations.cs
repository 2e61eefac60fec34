using System.Text;

namespace PushSim.Scenarios.Tests;

/// <summary>Random damage to a file's bytes from a seed: what flipped bits, cut transfers, editors and ill will make of it.</summary>
internal sealed class Mutations(int seed, byte[][] corpus)
{
    // words of the readers' own language and of attacks, so that damaged files often get past the first check
    private static readonly byte[][] s_pieces =
    [
        .. new[]
        {
            "", "\n", "\r", "\t", "\"", "'", "\"\"\"", "[", "]", "{", "}", "=", ",", ";", ".", "#", "\\", "\\u0000", "\\x", "0", "-0", "-1", "1e999", "-1e308", "1e-320", "nan", "inf", "-inf",
            "9223372036854775808", "0x", "1_000", "2000-02-30", "\"0 m\"", "\"-1 mm\"", "\"1e308 kg\"", "\"1 ± 1e308\"", "\"5 parsec\"", "\"±\"", "true", "[]", "{}", "[[tyre]]\n", "[[wheel]]\n", "[[drive]]\n",
            "[[controller]]\n", "[override]\n", "\"a.b.c.d.e.f.g.h\" = 1\n", "include = [\"parts/tyres.toml\"]\n", "include = [\"m.toml\"]\n", "include = [\"robots/m.toml\"]\n", "include = [\"../outside/secret.toml\"]\n",
            "robot = \"../outside/secret.toml\"\n", "robot = \"link.toml\"\n", "robot = \"folder-link/secret.toml\"\n", "robot = \"/etc/passwd\"\n", "robot = \"/dev/zero\"\n", "robot = \"pipe\"\n", "include = [\"link.toml\"]\n",
            "[measured]\nfile = \"pipe\"\n", "[measured]\nfile = \"../outside/secret.csv\"\n", "[measured]\nfile = \"link.csv\"\n", "[measured]\nfile = \"logs/soft-tyre.csv\"\n", "shelf = \"moulded natural rubber 60A\"\n", "shelf = \"chewing gum\"\n",
            "\u001b[2J", "\u0000", "\u202e", "é", "😀", "<script>", "=cmd()", "%s%n", "..", "../", "/", "C:\\", "\\\\host\\share", "~", "time,force [N]\n", "0;1,5\n", "kgf", "12:00:00.1", "1.234,5", "1,234.5", "\uFEFF",
        }.Select(Encoding.UTF8.GetBytes),
        [0xff], [0xc0, 0x80], [0xed, 0xa0, 0x80], [0xfe, 0xff], [0xff, 0xfe], Encoding.UTF8.GetBytes(new string('[', 3000)), Encoding.UTF8.GetBytes(new string('9', 2000)),
        Encoding.UTF8.GetBytes("robot = \"" + new string('a', 5000) + "\"\n"), Encoding.UTF8.GetBytes("a = " + string.Concat(Enumerable.Repeat("{a=", 200))), Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("a.", 500)) + "b = 1\n"),
    ];

    private readonly Random _random = new(seed);

    public int Next(int below) => _random.Next(below);

    /// <summary>One file of the corpus with one to six damages.</summary>
    public byte[] Damaged()
    {
        List<byte> bytes = [.. corpus[Next(corpus.Length)]];
        for (int i = 1 + Next(_random.Next(3) == 0 ? 6 : 2); i > 0; i--)
        {
            Damage(bytes);
        }

        return [.. bytes.Take(200_000)];
    }

    private void Damage(List<byte> b)
    {
        int at = Next(b.Count + 1);
        int length = Math.Min(b.Count - at, 1 + Next(1 << Next(9)));
        switch (Next(9))
        {
            case 0 when at < b.Count:
                b[at] ^= (byte)(1 << Next(8));
                break;
            case 1 when at < b.Count:
                b[at] = (byte)Next(256);
                break;
            case 2:
                b.RemoveRange(at, length);
                break;
            case 3:
                b.InsertRange(Next(b.Count + 1), b.GetRange(at, length));
                break;
            case 4:
                b.RemoveRange(at, length);
                b.InsertRange(at, s_pieces[Next(s_pieces.Length)]);
                break;
            case 5:
                b.InsertRange(LineStart(b, at), s_pieces[Next(s_pieces.Length)]);
                break;
            case 6:
                byte[] other = corpus[Next(corpus.Length)];
                int from = Next(other.Length);
                b.InsertRange(LineStart(b, at), other.AsSpan(from, Math.Min(other.Length - from, 1 + Next(400))).ToArray());
                break;
            case 7:
                ReplaceValue(b, at);
                break;
            default:
                if (Next(8) == 0)
                {
                    b.RemoveRange(at, b.Count - at);
                }

                break;
        }
    }

    // What stands behind an equals sign or a comma becomes something else.
    private void ReplaceValue(List<byte> b, int at)
    {
        int start = at;
        while (start < b.Count && b[start] is not ((byte)'=' or (byte)',' or (byte)';'))
        {
            start++;
        }

        int end = start;
        while (end < b.Count && b[end] != '\n' && (end == start || b[end] is not ((byte)',' or (byte)';')))
        {
            end++;
        }

        if (start < end)
        {
            b.RemoveRange(start + 1, end - start - 1);
            b.InsertRange(start + 1, s_pieces[Next(s_pieces.Length)]);
        }
    }

    private static int LineStart(List<byte> b, int at)
    {
        while (at > 0 && b[at - 1] != '\n')
        {
            at--;
        }

        return at;
    }
}
