using System.Collections.Immutable;
using PushSim.Files;

namespace PushSim.Workbench.Designs;

/// <summary>Opens files for the workbench, by the read gate and with the limits of any reading.</summary>
internal static class DesignFiles
{
    private static readonly UTF8Encoding s_strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The files that a file is made of; null if it cannot be read at all, then the complaints say why.</summary>
    /// <param name="path">The file as the user named it.</param>
    /// <param name="read">What was read.</param>
    /// <param name="garage">Folder of the garage that names come from; null: the nearest one upwards.</param>
    public static Design? Open(string path, out ReadResult read, string? garage = null)
    {
        read = ScenarioReader.Check(path, new ReadOptions { Garage = garage });
        if (read.Files.Count == 0)
        {
            return null;
        }

        var texts = ImmutableSortedDictionary.CreateBuilder<string, OpenText>(StringComparer.Ordinal);
        foreach ((string name, string real) in read.Files.DistinctBy(f => f.Path))
        {
            if (Text(real) is (string text, bool mark))
            {
                texts[real] = new OpenText(real, name, text, mark, text);
            }
        }

        return texts.ContainsKey(read.Files[0].Path) ? new Design(read.Files[0].Path, path, texts.ToImmutable()) { Garage = garage } : null;
    }

    /// <summary>The text of a file without its byte-order mark, and whether it has one; null if it cannot be read.</summary>
    public static (string Text, bool HasMark)? Text(string path)
    {
        try
        {
            using OpenedFile file = ReadGate.Open(path);
            if (file.State != OpenState.Open || file.Stream!.Length > new ReadOptions().MaxBytes)
            {
                return null;
            }

            using var reader = new MemoryStream();
            file.Stream.CopyTo(reader);
            string text = s_strict.GetString(reader.GetBuffer(), 0, (int)reader.Length);
            return text.StartsWith('\uFEFF') ? (text[1..], true) : (text, false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or DecoderFallbackException)
        {
            return null;
        }
    }
}
