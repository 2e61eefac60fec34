using System.Text;

namespace PushSim.Cli;

/// <summary>
/// A folder for a command's files. One that carries our mark is emptied of our files and filled anew; anything else that is
/// there needs --force. Files are written beside and then renamed, so that none is ever half there.
/// </summary>
internal sealed class OutputFolder
{
    /// <summary>The mark: lists the files we wrote, one a line.</summary>
    public const string MarkName = ".pushsim-output";

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
        else if (Directory.Exists(full) && Directory.EnumerateFileSystemEntries(full).Any() && !force)
        {
            throw new IOException($"{path} exists and is not an output of pushsim; give another with --out, or --force to write into it");
        }

        Directory.CreateDirectory(full);
        return new OutputFolder(full, old);
    }

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

    /// <summary>Writes a file of the folder.</summary>
    /// <returns>Its path.</returns>
    public string Write(string name, Action<Stream> content)
    {
        string target = System.IO.Path.Combine(Path, name);
        string beside = target + ".part";
        try
        {
            using (FileStream stream = File.Create(beside))
            {
                content(stream);
            }

            RemoveOld();
            File.Move(beside, target, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }

        _written.Add(name);
        File.WriteAllLines(System.IO.Path.Combine(Path, MarkName), _written, new UTF8Encoding(false));
        return target;
    }

    private void RemoveOld()
    {
        foreach (string name in _old)
        {
            File.Delete(System.IO.Path.Combine(Path, name));
        }

        _old = [];
    }
}
