namespace PushSim.Files;

/// <summary>The three places of an output: the folder that people see, the private one in which files come into being, and the old one on its way out. Puts a result in place, and mends what a
/// killed command left: each step can be taken again.</summary>
internal sealed class FolderPlaces
{
    private readonly FolderAsk _ask;
    private readonly string _old;
    private readonly bool _isInner;
    private readonly HashSet<string> _told = new(StringComparer.Ordinal);

    /// <summary>The places of one folder.</summary>
    /// <param name="ask">What is asked.</param>
    /// <param name="path">The folder that people see, with the links above it followed.</param>
    /// <param name="prefix">What the names of the other two begin with.</param>
    /// <param name="isInner">Whether these stand inside the folder.</param>
    public FolderPlaces(FolderAsk ask, string path, string prefix, bool isInner)
    {
        (_ask, Path, _isInner) = (ask, path, isInner);
        (New, _old) = (prefix + "new", prefix + "old");
    }

    /// <summary>The folder that people see.</summary>
    public string Path { get; }

    /// <summary>The private folder.</summary>
    public string New { get; }

    /// <summary>Path of a file in the folder that people see.</summary>
    public string Of(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Tells something of a name once.</summary>
    public void TellOnce(string name, string what)
    {
        if (_told.Add(name))
        {
            _ask.Lock.Tell(what);
        }
    }

    /// <summary>Whether the command reads the file.</summary>
    public bool IsInput(string name) => InputLog.Has(Of(name));

    /// <summary>Whether a file is as one of the marks tells.</summary>
    public static bool IsOurs(string path, string name, params OutputMark?[] marks) => marks.Any(m => m?.Of(name) is { Hash.Length: > 0 }) && Disk.Hash(path) is { Length: > 0 } hash && marks.Any(m => m?.Of(name)?.Hash == hash);

    /// <summary>Whether killed commands leave a file of this name.</summary>
    public bool IsWork(string name) => WriteGate.IsPart(name) || (_isInner && name.StartsWith(".pushsim-", StringComparison.Ordinal) && name != OutputMark.Name);

    /// <summary>Puts the private folder in place.</summary>
    public void PutInPlace()
    {
        if (Disk.Look(Path) == PathKind.None)
        {
            Disk.MoveFolder(New, Path);
        }
        else if (!IsOursAlone() || !Swap())
        {
            Merge();
        }
    }

    /// <summary>Whether nothing in the folder needs it to stay: only files that we know by name, none of which the command reads, and nobody stands in it.</summary>
    public bool IsOursAlone()
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
            Disk.Move(Of(name), System.IO.Path.Combine(New, name));
        }

        try
        {
            Disk.MoveFolder(Path, _old);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException && Disk.Look(_old) == PathKind.None)
        {
            return false;
        }

        try
        {
            Disk.MoveFolder(New, Path);
        }
        catch when (Disk.Look(Path) == PathKind.None)
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
        OutputMark fresh = OutputMark.Read(New) ?? throw new IOException($"the mark of {New} is gone");
        if (!Disk.MakeFolder(_old) && Disk.Look(_old) != PathKind.Folder)
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
            bool isDue = Disk.Look(System.IO.Path.Combine(New, name)) != PathKind.None;
            if (Disk.Look(Of(name)) == PathKind.None || (!isDue && fresh.Of(name) is not null) || IsInput(name))
            {
                continue;
            }

            if (IsOurs(Of(name), name, old, fresh))
            {
                Disk.Move(Of(name), System.IO.Path.Combine(_old, FreeIn(_old, name)));
            }
        }

        TellOfOthers(fresh, old);
        foreach (string name in Disk.List(New).Where(n => n != OutputMark.Name))
        {
            if (!IsInput(name))
            {
                ClearTheWay(name);
            }

            Disk.Move(System.IO.Path.Combine(New, name), Of(IsInput(name) ? FreeIn(Path, name) : name));
        }

        if (OutputMark.Read(Path) is null)
        {
            ClearTheWay(OutputMark.Name);
        }

        Disk.Replace(System.IO.Path.Combine(New, OutputMark.Name), Of(OutputMark.Name));
        Disk.DeleteFolder(New);
        ClearOld();
    }

    private static string FreeIn(string folder, string name)
    {
        string free = name;
        for (int n = 1; Disk.Look(System.IO.Path.Combine(folder, free)) != PathKind.None; n++)
        {
            free = WriteGate.Numbered(name, ".kept-", n);
        }

        return free;
    }

    /// <summary>Moves a file of the user's aside and tells it.</summary>
    public void ClearTheWay(string name)
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
        if (Disk.Look(_old) != PathKind.Folder)
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

    /// <summary>What a killed command left: a complete private folder is put in place, one half written goes, a folder that was renamed away comes back.</summary>
    public void Mend()
    {
        foreach (string left in new[] { New, _old })
        {
            if (Disk.Look(left) is not (PathKind.None or PathKind.Folder))
            {
                throw new IOException($"{left} is in the way: it is no work of pushsim");
            }
        }

        bool isComplete = OutputMark.Read(New) is { State: not OutputState.Begun };
        if (Disk.Look(Path) == PathKind.None)
        {
            if (isComplete)
            {
                Disk.MoveFolder(New, Path);
            }
            else if (Disk.Look(_old) == PathKind.Folder)
            {
                Disk.MoveFolder(_old, Path);
            }
        }
        else if (isComplete)
        {
            Merge();
        }

        if (Disk.Look(New) == PathKind.Folder)
        {
            Discard();
        }

        if (Disk.Look(Path) == PathKind.Folder)
        {
            ClearOld();
            foreach (string part in Disk.List(Path).Where(WriteGate.IsPart).Select(Of).Where(p => Disk.Look(p) == PathKind.File))
            {
                Disk.Delete(part);
            }
        }
    }

    /// <summary>Removes the private folder: only files that its own mark names, or that came into being for it.</summary>
    public void Discard()
    {
        OutputMark? mark = OutputMark.Read(New);

        // the mark last: without it nobody knows the others
        foreach (string name in Disk.List(New).OrderBy(n => n == OutputMark.Name))
        {
            string path = System.IO.Path.Combine(New, name);
            if (Disk.Look(path) == PathKind.File && (name == OutputMark.Name ? mark is not null : mark?.Of(name) is not null || WriteGate.IsPart(name)))
            {
                Disk.Delete(path);
            }
        }

        if (!Disk.DeleteFolder(New))
        {
            string? aside = WriteGate.Aside(New);
            _ask.Lock.Tell($"{New} holds files that pushsim did not make; they are kept in {aside}");
        }
    }
}
