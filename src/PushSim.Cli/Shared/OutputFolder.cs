namespace PushSim.Cli.Shared;

/// <summary>
/// A folder for a command's files. One that carries our mark is emptied of our files and filled anew; anything else that is
/// there needs --force. Files are written beside and then renamed, so that none is ever half there.
/// </summary>
internal sealed class OutputFolder
{
    /// <summary>The mark: lists the files we wrote, one a line.</summary>
    public const string MarkName = ".pushsim-output";

    private const string Part = ".part";

    private readonly List<string> _written = [];

    // What an earlier run left; it stays until there is something new, so that an interrupted run loses nothing.
    private string[] _old;

    private OutputFolder(string path, string[] old)
    {
        Path = path;
        _old = old;
    }

    public string Path { get; }

    /// <summary>Opens or makes a folder. Throws <see cref="IOException"/> if it is not ours and not forced.</summary>
    public static OutputFolder Open(string path, bool force)
    {
        string full = System.IO.Path.GetFullPath(path);
        if (File.Exists(full))
        {
            throw new IOException($"{path} is a file; give another folder with --out");
        }

        string[] old = [];
        string mark = System.IO.Path.Combine(full, MarkName);
        if (File.Exists(mark))
        {
            // only plain names directly in the folder
            old = [.. File.ReadAllLines(mark).Where(name => name.Length > 0 && name == System.IO.Path.GetFileName(name) && name != "." && name != "..")];
        }
        else if (Directory.Exists(full) && Directory.EnumerateFileSystemEntries(full).Any(f => !System.IO.Path.GetFileName(f).StartsWith(MarkName + ".", StringComparison.Ordinal)) && !force)
        {
            throw new IOException($"{path} exists and is not an output of pushsim; give another with --out, or --force to write into it");
        }

        Directory.CreateDirectory(full);
        foreach (string left in Directory.EnumerateFiles(full, MarkName + ".*" + Part))
        {
            File.Delete(left);
        }

        return new OutputFolder(full, old);
    }

    /// <summary>A folder to look into only: nothing is made, and nothing is written.</summary>
    public static OutputFolder See(string path, bool force) => new(System.IO.Path.GetFullPath(path), []);

    /// <summary>Opens or makes a folder that several processes write parts into at once: nothing in it is removed. Throws <see cref="IOException"/> if it is not ours and not forced.</summary>
    public static OutputFolder Join(string path, bool force)
    {
        string full = System.IO.Path.GetFullPath(path);
        Directory.CreateDirectory(full);
        string mark = System.IO.Path.Combine(full, MarkName);
        try
        {
            // whoever comes first makes the mark, the others find it; parts are ours too
            if (!File.Exists(mark) && (force || Directory.EnumerateFileSystemEntries(full).All(e => System.IO.Path.GetFileName(e).StartsWith("part-", StringComparison.Ordinal) || e == mark)))
            {
                using FileStream made = new(mark, FileMode.CreateNew);
            }
        }
        catch (IOException) when (File.Exists(mark))
        {
            // another process was faster
        }

        return File.Exists(mark) ? new OutputFolder(full, []) : throw new IOException($"{path} exists and is not an output of pushsim; give another with --out, or --force to write into it");
    }

    /// <summary>Marks the folder as ours before anything else is written into it by other means, so that a killed run can go on in it.</summary>
    /// <param name="besides">Names that such writing may leave beside its files; the next <see cref="Write"/> removes them.</param>
    public void Claim(params string[] besides)
    {
        _old = [.. _old, .. besides];
        WriteMark(_old);
    }

    /// <summary>Writes a file of the folder. Whenever it is interrupted, the folder stays ours, its files whole, and the next run clears up.</summary>
    public string Write(string name, Action<Stream> content)
    {
        string target = System.IO.Path.Combine(Path, name);
        string beside = target + Part;

        // first in the mark, then on the disk: what a killed run leaves is known to the next one
        WriteMark([.. _old, .. _written, name, name + Part]);
        WriteBeside(beside, target, content, () => RemoveOld(except: name + Part));
        _written.Add(name);
        WriteMark(_written);
        return target;
    }

    /// <summary>Writes a picture as PNG, SVG and PDF.</summary>
    public IReadOnlyList<string> WritePicture(string name, PlotSheet picture) => [Write(name + ".pdf", picture.WritePdf), Write(name + ".svg", picture.WriteSvg), Write(name + ".png", picture.WritePng)];

    private static void WriteBeside(string beside, string target, Action<Stream> content, Action beforeMove)
    {
        try
        {
            using (Stream stream = Disk.Now.Create(beside))
            {
                content(stream);
            }

            beforeMove();
            Disk.Now.Move(beside, target);
        }
        catch
        {
            Disk.Now.Delete(beside);
            throw;
        }
    }

    private void WriteMark(IEnumerable<string> names)
    {
        string mark = System.IO.Path.Combine(Path, MarkName);

        // several processes may share the folder
        string beside = string.Create(CultureInfo.InvariantCulture, $"{mark}.{Environment.ProcessId}{Part}");
        WriteBeside(beside, mark, s => s.Write(Encoding.UTF8.GetBytes(string.Concat(names.Distinct(StringComparer.Ordinal).Select(n => n + "\n")))), () => { });
    }

    private void RemoveOld(string except)
    {
        foreach (string name in _old.Where(n => n != except))
        {
            Disk.Now.Delete(System.IO.Path.Combine(Path, name));
        }

        _old = [];
    }
}
