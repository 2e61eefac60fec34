namespace PushSim.Cli.Shared;

/// <summary>A drawn picture in one form, not yet in its folder: it can be drawn beside other work.</summary>
/// <param name="Name">Name of its file.</param>
/// <param name="Bytes">What stands in it.</param>
internal sealed record PictureFile(string Name, byte[] Bytes)
{
    /// <summary>Draws a picture in the forms that are asked for, PNG last.</summary>
    /// <param name="name">Name of the files without their ending.</param>
    /// <param name="picture">The picture.</param>
    /// <param name="formats">The forms.</param>
    public static IReadOnlyList<PictureFile> Draw(string name, PlotSheet picture, PictureFormat formats)
    {
        (PictureFormat Format, string Ending, Action<Stream> Write)[] all =
        [
            (PictureFormat.Pdf, ".pdf", picture.WritePdf), (PictureFormat.Svg, ".svg", picture.WriteSvg), (PictureFormat.Png, ".png", picture.WritePng),
        ];
        return [.. all.Where(f => formats.HasFlag(f.Format)).Select(f => new PictureFile(name + f.Ending, Written(f.Write)))];
    }

    /// <summary>The forms that a text names, with commas between them; null if it names another one.</summary>
    public static PictureFormat? Formats(string text)
    {
        PictureFormat formats = PictureFormat.None;
        foreach (string word in text.Split(',', StringSplitOptions.TrimEntries))
        {
            PictureFormat one = word switch { "png" => PictureFormat.Png, "svg" => PictureFormat.Svg, "pdf" => PictureFormat.Pdf, _ => PictureFormat.None };
            if (one == PictureFormat.None)
            {
                return null;
            }

            formats |= one;
        }

        return formats;
    }

    /// <summary>What a writer writes.</summary>
    public static byte[] Written(Action<Stream> write)
    {
        using var memory = new MemoryStream();
        write(memory);
        return memory.ToArray();
    }
}
