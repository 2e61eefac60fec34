using System.Buffers.Binary;
using PushSim.Files;

namespace PushSim.Scenarios.Logs;

/// <summary>A recording in a WAV file: whole numbers of 8 to 32 bits or floats of 32, its channels averaged.</summary>
/// <param name="Rate">Samples a second [Hz].</param>
/// <param name="Samples">The samples, -1 to 1 [1].</param>
public sealed record WaveFile(double Rate, double[] Samples)
{
    private const int MostBytes = 256 * 1024 * 1024;
    private const int Integers = 1, Floats = 3, Extensible = 0xFFFE;

    /// <summary>Length [s].</summary>
    public double Length => Samples.Length / Rate;

    /// <summary>Reads a file; null and why where that fails.</summary>
    /// <param name="path">The file.</param>
    /// <param name="fault">Why; empty if it is read.</param>
    /// <param name="cannotRead">Whether it could not be read at all.</param>
    public static WaveFile? Read(string path, out string fault, out bool cannotRead)
    {
        cannotRead = true;
        try
        {
            using OpenedFile file = ReadGate.Open(path, new OpenAsk());
            if (file.State != OpenState.Open)
            {
                (string why, string help) = UnopenedFile.Of(file.State, path, SourceFile.Clean(path), ".wav");
                fault = $"{SourceFile.Clean(path)}: it {why}; {help}";
                return null;
            }

            using var memory = new MemoryStream();
            byte[] buffer = new byte[1 << 16];
            for (int n = file.Stream!.Read(buffer); n > 0 && memory.Length < MostBytes; n = file.Stream.Read(buffer))
            {
                memory.Write(buffer, 0, n);
            }

            WaveFile? wave = Parse(memory.ToArray());
            cannotRead = false;
            fault = wave is null ? $"{SourceFile.Clean(path)}: this is no WAV of whole numbers or floats; save it as 16 bit PCM" : "";
            return wave;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            fault = SourceFile.Clean(e.Message);
            return null;
        }
    }

    /// <summary>Reads bytes; null where they are no such file.</summary>
    public static WaveFile? Parse(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 44 || !bytes[..4].SequenceEqual("RIFF"u8) || !bytes[8..12].SequenceEqual("WAVE"u8))
        {
            return null;
        }

        int kind = 0, channels = 0, bits = 0, rate = 0;
        for (int at = 12; at + 8 <= bytes.Length;)
        {
            ReadOnlySpan<byte> name = bytes.Slice(at, 4);
            long size = BinaryPrimitives.ReadUInt32LittleEndian(bytes[(at + 4)..]);
            ReadOnlySpan<byte> body = bytes.Slice(at + 8, (int)Math.Min(size, bytes.Length - at - 8));
            if (name.SequenceEqual("fmt "u8) && body.Length >= 16)
            {
                kind = BinaryPrimitives.ReadUInt16LittleEndian(body);
                channels = BinaryPrimitives.ReadUInt16LittleEndian(body[2..]);
                rate = BinaryPrimitives.ReadInt32LittleEndian(body[4..]);
                bits = BinaryPrimitives.ReadUInt16LittleEndian(body[14..]);
                kind = kind == Extensible && body.Length >= 26 ? BinaryPrimitives.ReadUInt16LittleEndian(body[24..]) : kind;
            }
            else if (name.SequenceEqual("data"u8))
            {
                bool isKnown = channels is > 0 and <= 16 && rate > 0 && (kind == Floats ? bits == 32 : kind == Integers && bits is 8 or 16 or 24 or 32);
                return isKnown ? new WaveFile(rate, Mixed(body, channels, bits, kind == Floats)) : null;
            }

            long next = at + 8 + size + (size & 1);
            if (next > bytes.Length)
            {
                break;
            }

            at = (int)next;
        }

        return null;
    }

    private static double[] Mixed(ReadOnlySpan<byte> body, int channels, int bits, bool isFloat)
    {
        int width = bits / 8;
        double[] samples = new double[body.Length / (width * channels)];
        for (int i = 0; i < samples.Length; i++)
        {
            double sum = 0.0;
            for (int c = 0; c < channels; c++)
            {
                ReadOnlySpan<byte> b = body.Slice(((i * channels) + c) * width, width);
                sum += isFloat ? BinaryPrimitives.ReadSingleLittleEndian(b) : width switch
                {
                    1 => (b[0] - 128) / 128.0,
                    2 => BinaryPrimitives.ReadInt16LittleEndian(b) / 32768.0,
                    3 => ((b[0] << 8) | (b[1] << 16) | (b[2] << 24)) / 2147483648.0,
                    _ => BinaryPrimitives.ReadInt32LittleEndian(b) / 2147483648.0,
                };
            }

            samples[i] = double.IsFinite(sum) ? sum / channels : 0.0;
        }

        return samples;
    }
}
