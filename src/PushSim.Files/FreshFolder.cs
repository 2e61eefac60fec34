namespace PushSim.Files;

/// <summary>
/// An output folder of which a command writes the files anew. They come into being in a private folder beside it, made for this command alone, and are put in place whole: by two
/// renames of folders where all that is in the old one is ours, else file by file beside what is the user's. A start after a kill at any moment finishes or undoes that. What we
/// wrote we know by its hash in the mark; all else is the user's and stays, or is moved aside under a name that is told, and so does what the command read. A lock keeps a second
/// command out meanwhile.
/// </summary>
public sealed class FreshFolder : IDisposable
{
    private readonly FolderAsk _ask;
    private readonly HeldLock _lock;
    private readonly string _new;
    private readonly string _old;
    private readonly bool _isInner;
    private readonly SortedDictionary<string, OutputEntry> _written = new(StringComparer.Ordinal);
    private readonly HashSet<string> _told = new(StringComparer.Ordinal);
    private bool _isBegun;

    private FreshFolder(FolderAsk ask, string path, HeldLock held, string prefix, bool isInner)
    {
        (_ask, Path, _lock, _isInner) = (ask, path, held, isInner);
        (_new, _old) = (prefix + "new", prefix + "old");
    }

    /// <summary>The folder, with the links above it followed.</summary>
    public string Path { get; }

    /// <summary>What the folder held when it was opened; null where there was none, or one that is not ours.</summary>
    public OutputMark? Before { get; private set; }

    /// <summary>Locks a folder, mends what a killed command left and looks whether it is ours. Throws <see cref="IOException"/> where it is not, or is no folder.</summary>
    public static FreshFolder Open(FolderAsk ask)
    {
        (string path, string prefix) = FolderLock.Place(ask.Path);
        RefuseOthers(ask.Path, path);
        (HeldLock held, bool isInner) = FolderLock.Take(path, ref prefix, "", ask.Lock);
        var folder = new FreshFolder(ask, path, held, prefix, isInner);
        try
        {
            folder.Mend();
            folder.RefuseForeign();
            folder.Before = OutputMark.Read(path);
            return folder;
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    /// <summary>Makes the folder, if it is not there, and marks it as ours, so that other files of a command may lie in it before there is a result.</summary>
    public void Claim()
    {
        Disk.MakeFolder(Path);
        if (OutputMark.Read(Path) is null)
        {
            ClearTheWay(OutputMark.Name);
            WriteGate.Create(Of(OutputMark.Name), s => s.Write(Encoding.UTF8.GetBytes(new OutputMark(OutputState.Begun, _ask.Source, []).Text)));
        }
    }

    /// <summary>Begins the private folder: from here on a result has somewhere to go.</summary>
    public void Begin()
    {
        if (_isBegun)
        {
            return;
        }

        if (Disk.Look(Path) == FileKind.Folder && !IsOursAlone())
        {
            // the files will go in one by one: no work for a result that has nowhere to go
            WriteGate.Try(Path);
        }

        if (!Disk.MakeFolder(_new))
        {
            throw new IOException($"{_new} is in the way: it is no work of pushsim");
        }

        _isBegun = true;
        WriteMark(OutputState.Begun);
    }

    /// <summary>Writes a file of the result, which appears in the folder with all the others at <see cref="Commit"/>.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="content">Writes it.</param>
    /// <param name="isForm">Whether a person fills it in: one that is filled in keeps its name, and the new one gets another.</param>
    /// <returns>The path that it will have.</returns>
    public string Write(string name, Action<Stream> content, bool isForm = false)
    {
        Begin();
        string free = Free(name, isForm);
        string path = System.IO.Path.Combine(_new, free);
        if (_written.ContainsKey(free))
        {
            Disk.Delete(path);
        }

        // first in the mark, then on the disk: what a killed command leaves is known to the next one
        _written[free] = new OutputEntry(free, "", isForm);
        WriteMark(OutputState.Begun);
        string hash;
        using (WatchedStream stream = Disk.Create(path))
        {
            content(stream);
            hash = stream.Hash;
        }

        _written[free] = new OutputEntry(free, hash, isForm);
        return System.IO.Path.GetFullPath(System.IO.Path.Combine(_ask.Path, free));
    }

    /// <summary>Puts the files in place.</summary>
    /// <param name="isWhole">False for what an interrupted command has: it does not take the place of a whole result.</param>
    /// <returns>Whether they are there.</returns>
    public bool Commit(bool isWhole = true)
    {
        if (!_isBegun)
        {
            return true;
        }

        if (!isWhole && Before?.State == OutputState.Whole && _written.Count > 0)
        {
            _ask.Lock.Tell($"the whole result of an earlier command stays in {_ask.Path}; what this one has is not written over it");
            Discard();
            return false;
        }

        if (_written.Count == 0)
        {
            Discard();
            return true;
        }

        WriteMark(isWhole ? OutputState.Whole : OutputState.Partial);

        // what fails from here on is finished by the next command, or undone
        _isBegun = false;
        PutInPlace();
        _written.Clear();
        return true;
    }

    /// <summary>Lets go of the folder's lock: what follows only adds to files that are there.</summary>
    public void Release() => _lock.Dispose();

    /// <inheritdoc/>
    public void Dispose()
    {
        try
        {
            if (_isBegun)
            {
                Discard();
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // the next command clears up
        }
        finally
        {
            _lock.Dispose();
        }
    }

    private string Of(string name) => System.IO.Path.Combine(Path, name);

    private static void RefuseOthers(string shown, string path)
    {
        string? wrong = Disk.Look(path) switch
        {
            FileKind.File => "is a file",
            FileKind.Link => "is a link, which could lead anywhere",
            FileKind.Other => "is no folder",
            _ => null,
        };
        if (wrong is not null)
        {
            throw new IOException($"{shown} {wrong}; give another folder with --out");
        }
    }

    private void RefuseForeign()
    {
        RefuseOthers(_ask.Path, Path);
        if (!_ask.Force && Disk.Look(Path) == FileKind.Folder && OutputMark.Read(Path) is null && Disk.List(Path).Any(n => !IsWork(n) && !_ask.IsKept(n)))
        {
            throw new IOException($"{_ask.Path} exists and is not an output of pushsim; give another with --out, or --force to write into it");
        }
    }

    // What killed commands leave in a folder besides files with names of their own.
    private bool IsWork(string name) => WriteGate.IsPart(name) || (_isInner && name.StartsWith(".pushsim-", StringComparison.Ordinal) && name != OutputMark.Name);

    // A free name for a file: that of a filled-in form, and of what the command reads, stays with it.
    private string Free(string name, bool isForm)
    {
        string free = name;
        for (int n = 2; IsInput(free) || (isForm && Disk.Look(Of(free)) != FileKind.None && !IsOurs(Of(free), free, Before)); n++)
        {
            free = WriteGate.Numbered(name, "-", n);
        }

        if (free != name && _told.Add(name))
        {
            _ask.Lock.Tell($"{System.IO.Path.Combine(_ask.Path, name)} {(IsInput(name) ? "is read by this command" : "is filled in")} and stays; the new one is {free}");
        }

        return free;
    }

    private bool IsInput(string name) => InputLog.Has(Of(name));

    private static bool IsOurs(string path, string name, params OutputMark?[] marks) => marks.Any(m => m?.Of(name) is { Hash.Length: > 0 }) && Disk.Hash(path) is { Length: > 0 } hash && marks.Any(m => m?.Of(name)?.Hash == hash);

    private void WriteMark(OutputState state) =>
        WriteGate.Replace(System.IO.Path.Combine(_new, OutputMark.Name), s => s.Write(Encoding.UTF8.GetBytes(new OutputMark(state, _ask.Source, [.. _written.Values]).Text)));

    private void PutInPlace()
    {
        if (Disk.Look(Path) == FileKind.None)
        {
            Disk.MoveFolder(_new, Path);
        }
        else if (!IsOursAlone() || !Swap())
        {
            Merge();
        }
    }

    // Whether nothing in the folder needs it to stay: only files that we know by name, none of which the command reads, and nobody stands in it.
    private bool IsOursAlone()
    {
        if (_isInner || OutputMark.Read(Path) is not OutputMark mark || RealPath.IsInside(Path, RealPath.Of(Environment.CurrentDirectory)))
        {
            return false;
        }

        return Disk.List(Path).All(n => n == OutputMark.Name || _ask.IsKept(n) || (mark.Of(n) is not null && !IsInput(n)));
    }

    // The two renames; false where the first one is not possible, as for a folder on which a disk is mounted.
    private bool Swap()
    {
        foreach (string name in Disk.List(Path).Where(n => _ask.IsKept(n)))
        {
            Disk.Move(Of(name), System.IO.Path.Combine(_new, name));
        }

        try
        {
            Disk.MoveFolder(Path, _old);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException && Disk.Look(_old) == FileKind.None)
        {
            return false;
        }

        try
        {
            Disk.MoveFolder(_new, Path);
        }
        catch when (Disk.Look(Path) == FileKind.None)
        {
            Disk.MoveFolder(_old, Path);
            throw;
        }

        ClearOld();
        return true;
    }

    // File by file: each step can be taken again, so that the next command goes on where a killed one stopped.
    private void Merge()
    {
        OutputMark fresh = OutputMark.Read(_new) ?? throw new IOException($"the mark of {_new} is gone");
        if (!Disk.MakeFolder(_old) && Disk.Look(_old) != FileKind.Folder)
        {
            throw new IOException($"{_old} is in the way: it is no work of pushsim");
        }

        // the old mark is kept until the end: it tells which of the old files are ours
        string oldMark = System.IO.Path.Combine(_old, OutputMark.Name);
        if (OutputMark.Read(Path) is OutputMark mark && OutputMark.Read(_old) is null)
        {
            WriteGate.Create(oldMark, s => s.Write(Encoding.UTF8.GetBytes(mark.Text)));
        }

        OutputMark? old = OutputMark.Read(_old);
        foreach (string name in fresh.Entries.Concat(old?.Entries ?? []).Select(e => e.Name).Distinct(StringComparer.Ordinal).Where(n => !_ask.IsKept(n)))
        {
            bool isDue = Disk.Look(System.IO.Path.Combine(_new, name)) != FileKind.None;
            if (Disk.Look(Of(name)) == FileKind.None || (!isDue && fresh.Of(name) is not null) || IsInput(name))
            {
                continue;
            }

            if (IsOurs(Of(name), name, old, fresh))
            {
                Disk.Move(Of(name), System.IO.Path.Combine(_old, FreeIn(_old, name)));
            }
        }

        TellOfOthers(fresh, old);
        foreach (string name in Disk.List(_new).Where(n => n != OutputMark.Name))
        {
            if (!IsInput(name))
            {
                ClearTheWay(name);
            }

            Disk.Move(System.IO.Path.Combine(_new, name), Of(IsInput(name) ? FreeIn(Path, name) : name));
        }

        if (OutputMark.Read(Path) is null)
        {
            ClearTheWay(OutputMark.Name);
        }

        Disk.Replace(System.IO.Path.Combine(_new, OutputMark.Name), Of(OutputMark.Name));
        Disk.DeleteFolder(_new);
        ClearOld();
    }

    private static string FreeIn(string folder, string name)
    {
        string free = name;
        for (int n = 1; Disk.Look(System.IO.Path.Combine(folder, free)) != FileKind.None; n++)
        {
            free = WriteGate.Numbered(name, ".kept-", n);
        }

        return free;
    }

    private void ClearTheWay(string name)
    {
        if (WriteGate.Aside(Of(name)) is string aside)
        {
            _ask.Lock.Tell($"{System.IO.Path.Combine(_ask.Path, name)} is not as pushsim wrote it; it is kept as {System.IO.Path.GetFileName(aside)}");
        }
    }

    private void TellOfOthers(OutputMark fresh, OutputMark? old)
    {
        string[] others = [.. Disk.List(Path).Where(n => n != OutputMark.Name && !IsWork(n) && !_ask.IsKept(n) && fresh.Of(n) is null && (old?.Of(n) is null || !IsOurs(Of(n), n, old)) && _told.Add(n))];
        if (others.Length > 0)
        {
            _ask.Lock.Tell($"{_ask.Path} also holds {string.Join(", ", others.Take(3))}{(others.Length > 3 ? $" and {others.Length - 3} more" : "")}, not as pushsim wrote it; it stays");
        }
    }

    // Removes what was ours in the old folder, by its hash, and gives the rest back.
    private void ClearOld()
    {
        if (Disk.Look(_old) != FileKind.Folder)
        {
            return;
        }

        OutputMark? old = OutputMark.Read(_old);
        OutputMark? now = OutputMark.Read(Path);
        foreach (string name in Disk.List(_old).Where(n => n != OutputMark.Name))
        {
            string path = System.IO.Path.Combine(_old, name);
            if (IsOurs(path, name, old, now))
            {
                Disk.Delete(path);
                continue;
            }

            string free = FreeIn(Path, name);
            Disk.Move(path, Of(free));
            if (!_ask.IsKept(name) && _told.Add(name))
            {
                _ask.Lock.Tell($"{System.IO.Path.Combine(_ask.Path, name)} was changed since pushsim wrote it; it is kept{(free == name ? "" : " as " + free)}");
            }
        }

        if (old is not null)
        {
            Disk.Delete(System.IO.Path.Combine(_old, OutputMark.Name));
        }

        Disk.DeleteFolder(_old);
    }

    // What a killed command left: a complete private folder is put in place, one half written goes, a folder that was renamed away comes back.
    private void Mend()
    {
        foreach (string left in new[] { _new, _old })
        {
            if (Disk.Look(left) is not (FileKind.None or FileKind.Folder))
            {
                throw new IOException($"{left} is in the way: it is no work of pushsim");
            }
        }

        bool isComplete = OutputMark.Read(_new) is { State: not OutputState.Begun };
        if (Disk.Look(Path) == FileKind.None)
        {
            if (isComplete)
            {
                Disk.MoveFolder(_new, Path);
            }
            else if (Disk.Look(_old) == FileKind.Folder)
            {
                Disk.MoveFolder(_old, Path);
            }
        }
        else if (isComplete)
        {
            Merge();
        }

        if (Disk.Look(_new) == FileKind.Folder)
        {
            Discard();
        }

        if (Disk.Look(Path) == FileKind.Folder)
        {
            ClearOld();
            foreach (string part in Disk.List(Path).Where(WriteGate.IsPart).Select(Of).Where(p => Disk.Look(p) == FileKind.File))
            {
                Disk.Delete(part);
            }
        }
    }

    // Removes a private folder: only files that its own mark names, or that came into being for it.
    private void Discard()
    {
        _isBegun = false;
        _written.Clear();
        OutputMark? mark = OutputMark.Read(_new);

        // the mark last: without it nobody knows the others
        foreach (string name in Disk.List(_new).OrderBy(n => n == OutputMark.Name))
        {
            string path = System.IO.Path.Combine(_new, name);
            if (Disk.Look(path) == FileKind.File && (name == OutputMark.Name ? mark is not null : mark?.Of(name) is not null || WriteGate.IsPart(name)))
            {
                Disk.Delete(path);
            }
        }

        if (!Disk.DeleteFolder(_new))
        {
            string? aside = WriteGate.Aside(_new);
            _ask.Lock.Tell($"{_new} holds files that pushsim did not make; they are kept in {aside}");
        }
    }
}
