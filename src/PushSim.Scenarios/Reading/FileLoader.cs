using System.Text;
using PushSim.Files;

namespace PushSim.Scenarios.Reading;

/// <summary>Opens the files, within the limits: bounded size, regular files, no way out of the folder.</summary>
internal static class FileLoader
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The file's text; null after a complaint at the place that named it (or at the file itself).</summary>
    /// <param name="context">Gathers complaints.</param>
    /// <param name="path">The file.</param>
    /// <param name="name">Its name in messages.</param>
    /// <param name="from">Where another file names it, and how; null if the user did.</param>
    /// <param name="root">Folder that it must lie in, as <see cref="Root"/> gives it; null: it may lie anywhere.</param>
    public static SourceFile? Load(ReadContext context, string path, string name, (Place Place, string Text)? from, string? root = null)
    {
        Place place = from?.Place ?? new Place(new SourceFile(name, ""), 0, 0, 1);
        string shown = SourceFile.Clean(from?.Text ?? name);
        try
        {
            using OpenedFile file = ReadGate.Open(path, new OpenAsk { Root = root });
            switch (file.State)
            {
                case OpenState.Outside:
                    Leaves(context, place);
                    return null;
                case OpenState.NotThere or OpenState.Folder or OpenState.NoRegularFile:
                    context.CannotRead |= from is null && file.State != OpenState.NoRegularFile;
                    (string why, string help) = UnopenedFile.Of(file.State, path, shown, ".toml", from?.Place.File.Name);
                    bool isGarageName = file.State == OpenState.NotThere && from is null && name.IndexOfAny(['.', '/', '\\']) < 0 && !help.StartsWith("did", StringComparison.Ordinal);
                    context.Error(place, $"\"{shown}\" {why}", isGarageName ? "check the name; the name of a robot needs its garage: work in its folder or below, or add --garage DIR" : help);
                    return null;
                default:
                    context.Files.Add((name, file.RealPath));
                    if (context.Options.Texts?.GetValueOrDefault(file.RealPath) is string text)
                    {
                        return new SourceFile(name, WithLines(text));
                    }

                    return Decode(context, file.Stream!, name, place);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            context.CannotRead = true;
            context.Error(place, $"\"{shown}\" cannot be read: {SourceFile.Clean(e.Message)}", "");
            return null;
        }
    }

    /// <summary>The folder that files named from a folder must lie in, links followed; null where they may lie anywhere.</summary>
    public static string? Root(ReadContext context, string folder) => context.Options.AllowOutside ? null : Bound(context, RealPath.Of(folder));

    /// <summary>The folder of a file, from which the files that it names are looked for; "." for a bare name.</summary>
    public static string FolderOf(string path) => Path.GetDirectoryName(path) is { Length: > 0 } folder ? folder : ".";

    /// <summary>Full path of a file that another names, if it stays in the other's folder or below, links followed; null after a complaint.</summary>
    public static string? Resolve(ReadContext context, string folder, string relative, Place place)
    {
        bool isAllowed = context.Options.AllowOutside;
        bool isRooted = Path.IsPathRooted(relative) || relative.Contains(':', StringComparison.Ordinal) || relative.StartsWith('\\') || relative.Contains('\0', StringComparison.Ordinal);
        if (isRooted && !isAllowed)
        {
            context.Error(place, "this path does not start in the scenario's folder", "name the file from there, for example \"robots/mole.toml\"");
            return null;
        }

        string root, full;
        try
        {
            root = RealPath.Of(folder);
            full = RealPath.Of(Path.Combine(root, relative));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            // links in a circle
            context.CannotRead = true;
            context.Error(place, $"\"{SourceFile.Clean(relative)}\" cannot be read: {SourceFile.Clean(e.Message)}", "");
            return null;
        }

        if (!isAllowed && !RealPath.IsInside(Bound(context, root), full))
        {
            Leaves(context, place);
            return null;
        }

        return full;
    }

    // what lies in the garage may name all of it
    private static string Bound(ReadContext context, string real) => ((context.Options.Garage is null ? GarageFolder.Above(real) : null) ?? context.Garage) is { } garage && RealPath.Of(garage.Path) is var home && RealPath.IsInside(home, Path.Combine(real, GarageFolder.FileName)) ? home : real;

    private static void Leaves(ReadContext context, Place place) => context.Error(place, "this path leaves the scenario's folder", "put the robot's file in the same folder or below it");

    private static SourceFile? Decode(ReadContext context, Stream stream, string name, Place place)
    {
        int most = context.Options.MaxBytes;
        byte[] buffer = new byte[Math.Min(most, stream.Length is > 0 and long n ? n : most) + 1];
        int length = 0;

        // the file may grow: read on until it ends or the cap is passed
        int got;
        while (length <= most && (got = stream.Read(buffer, length, buffer.Length - length)) > 0)
        {
            length += got;
            if (length == buffer.Length && length <= most)
            {
                Array.Resize(ref buffer, Math.Min(most + 1, 2 * length));
            }
        }

        if (length == 0)
        {
            context.Error(place, $"\"{SourceFile.Clean(name)}\" is empty, or no regular file", "");
            return null;
        }

        if (length > most)
        {
            context.Error(place, $"\"{SourceFile.Clean(name)}\" is larger than {most} bytes", "a robot or scenario file has a few kilobytes");
            return null;
        }

        try
        {
            string text = Strict.GetString(buffer, 0, length);
            text = text.StartsWith('\uFEFF') ? text[1..] : text;

            return new SourceFile(name, WithLines(text));
        }
        catch (DecoderFallbackException)
        {
            (string what, string help) = IsBinary(buffer.AsSpan(0, length)) ? ("is not a text file", "name a robot or scenario file, which is text in TOML") : ("is not UTF-8 text", "save it as UTF-8");
            context.Error(place, $"\"{SourceFile.Clean(name)}\" {what}", help);
            return null;
        }
    }

    // Lines of old editors end in a carriage return alone.
    private static string WithLines(string text) => text.Contains('\n', StringComparison.Ordinal) ? text : text.Replace('\r', '\n');

    // A text in UTF-16 has zero bytes too, but begins with its byte-order mark.
    private static bool IsBinary(ReadOnlySpan<byte> bytes) => bytes.Contains((byte)0) && bytes is not ([0xFF, 0xFE, ..] or [0xFE, 0xFF, ..]);
}
