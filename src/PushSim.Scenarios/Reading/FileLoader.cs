using System.Text;

namespace PushSim.Scenarios.Reading;

/// <summary>Opens the files, within the limits: bounded size, regular files, no way out of the folder.</summary>
internal static class FileLoader
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The file's text; null after a complaint at the place that named it (or at the file itself).</summary>
    public static SourceFile? Load(ReadContext context, string path, string name, (Place Place, string Text)? from)
    {
        Place place = from?.Place ?? new Place(new SourceFile(name, ""), 0, 0, 1);
        string shown = SourceFile.Clean(from?.Text ?? name);
        try
        {
            var info = new FileInfo(path);
            if (!info.Exists)
            {
                string why = Directory.Exists(path) ? "is a folder, not a file" : "is not there";
                context.CannotRead |= from is null;
                context.Error(place, $"\"{shown}\" {why}", "check the name and the folder");
                return null;
            }

            if (!HasContent(info))
            {
                context.Error(place, $"\"{shown}\" is empty, or no regular file", "");
                return null;
            }

            return Decode(context, path, name, place);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            context.CannotRead = true;
            context.Error(place, $"\"{shown}\" cannot be read: {SourceFile.Clean(e.Message)}", "");
            return null;
        }
    }

    /// <summary>Whether a file that is there is a regular one with something in it: devices and pipes report no length, and opening one could wait for ever.</summary>
    public static bool HasContent(FileInfo info) => info.Length > 0 || info.ResolveLinkTarget(returnFinalTarget: true) is FileInfo { Length: > 0 };

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
            root = RealPath(Path.GetFullPath(folder));
            full = RealPath(Path.GetFullPath(relative, root));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            // links in a circle
            context.CannotRead = true;
            context.Error(place, $"\"{SourceFile.Clean(relative)}\" cannot be read: {SourceFile.Clean(e.Message)}", "");
            return null;
        }

        string back = Path.GetRelativePath(root, full);
        if (!isAllowed && (back == ".." || back.StartsWith(".." + Path.DirectorySeparatorChar, StringComparison.Ordinal) || Path.IsPathRooted(back)))
        {
            context.Error(place, "this path leaves the scenario's folder", "put the robot's file in the same folder or below it");
            return null;
        }

        return full;
    }

    private static SourceFile? Decode(ReadContext context, string path, string name, Place place)
    {
        int most = context.Options.MaxBytes;
        byte[] buffer = new byte[Math.Min(most, new FileInfo(path).Length is long n and > 0 ? n : most) + 1];
        int length = 0;
        using (FileStream stream = File.OpenRead(path))
        {
            // the file may grow or be a link: read on until it ends or the cap is passed
            int got;
            while (length <= most && (got = stream.Read(buffer, length, buffer.Length - length)) > 0)
            {
                length += got;
                if (length == buffer.Length && length <= most)
                {
                    Array.Resize(ref buffer, Math.Min(most + 1, 2 * length));
                }
            }
        }

        if (length > most)
        {
            context.Error(place, $"\"{SourceFile.Clean(name)}\" is larger than {most} bytes", "a robot or scenario file has a few kilobytes");
            return null;
        }

        try
        {
            string text = Strict.GetString(buffer, 0, length);
            return new SourceFile(name, text.StartsWith('\uFEFF') ? text[1..] : text);
        }
        catch (DecoderFallbackException)
        {
            (string what, string help) = IsBinary(buffer.AsSpan(0, length)) ? ("is not a text file", "name a robot or scenario file, which is text in TOML") : ("is not UTF-8 text", "save it as UTF-8");
            context.Error(place, $"\"{SourceFile.Clean(name)}\" {what}", help);
            return null;
        }
    }

    // A text in UTF-16 has zero bytes too, but begins with its byte-order mark.
    private static bool IsBinary(ReadOnlySpan<byte> bytes) => bytes.Contains((byte)0) && bytes is not ([0xFF, 0xFE, ..] or [0xFE, 0xFF, ..]);

    // The path with every link on the way followed; parts that do not exist stay as they are.
    private static string RealPath(string path, int depth = 0)
    {
        string? parent = Path.GetDirectoryName(path);
        if (parent is null || depth > 64)
        {
            return path;
        }

        string own = Path.Combine(RealPath(parent, depth + 1), Path.GetFileName(path));
        FileSystemInfo info = Directory.Exists(own) ? new DirectoryInfo(own) : new FileInfo(own);
        return info.LinkTarget is null ? own : Path.GetFullPath(info.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? own);
    }
}
