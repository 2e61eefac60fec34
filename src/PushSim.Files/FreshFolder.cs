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
    private readonly FolderPlaces _places;
    private readonly SortedDictionary<string, OutputEntry> _written = new(StringComparer.Ordinal);
    private bool _isBegun;

    private FreshFolder(FolderAsk ask, FolderPlaces places, HeldLock held) => (_ask, _places, _lock) = (ask, places, held);

    /// <summary>The folder, with the links above it followed.</summary>
    public string Path => _places.Path;

    /// <summary>What the folder held when it was opened; null where there was none, or one that is not ours.</summary>
    public OutputMark? Before { get; private set; }

    /// <summary>Locks a folder, mends what a killed command left and looks whether it is ours. Throws <see cref="IOException"/> where it is not, or is no folder.</summary>
    public static FreshFolder Open(FolderAsk ask)
    {
        (string path, string prefix) = FolderLock.Place(ask.Path);
        RefuseOthers(ask.Path, path);
        (HeldLock held, bool isInner) = FolderLock.Take(path, ref prefix, "", ask.Lock);
        var folder = new FreshFolder(ask, new FolderPlaces(ask, path, prefix, isInner), held);
        try
        {
            folder._places.Mend();
            RefuseOthers(ask.Path, path);
            RefuseForeign(ask.Path, path, ask.Force, n => folder._places.IsWork(n) || ask.IsKept(n));
            folder.Before = OutputMark.Read(path);
            return folder;
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    /// <summary>Throws <see cref="IOException"/> where <see cref="Open"/> would since the folder is not ours, for who has to work before he opens it. Nothing is made and nobody waited for: where another
    /// command works or was killed, the opening decides.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="force">Whether it may be one that is not ours.</param>
    /// <param name="isKept">See <see cref="FolderAsk.IsKept"/>.</param>
    public static void Expect(string path, bool force, Func<string, bool> isKept)
    {
        if (!Directory.Exists(System.IO.Path.GetDirectoryName(System.IO.Path.TrimEndingDirectorySeparator(System.IO.Path.GetFullPath(path)))))
        {
            return;
        }

        (string full, string prefix) = FolderLock.Place(path);
        RefuseOthers(path, full);
        bool isHeld = new[] { prefix, System.IO.Path.Combine(full, ".pushsim-") }.SelectMany(p => new[] { "new", "old", "lock" }, (p, what) => p + what).Any(p => Disk.Look(p) != PathKind.None);
        if (!isHeld)
        {
            RefuseForeign(path, full, force, n => WriteGate.IsPart(n) || isKept(n));
        }
    }

    /// <summary>Makes the folder, if it is not there, and marks it as ours, so that other files of a command may lie in it before there is a result.</summary>
    public void Claim()
    {
        Disk.MakeFolder(Path);
        if (OutputMark.Read(Path) is null)
        {
            _places.ClearTheWay(OutputMark.Name);
            WriteGate.Create(_places.Of(OutputMark.Name), s => s.Write(Encoding.UTF8.GetBytes(new OutputMark(OutputState.Begun, _ask.Source, []).Text)));
        }
    }

    /// <summary>Begins the private folder: from here on a result has somewhere to go.</summary>
    public void Begin()
    {
        if (_isBegun)
        {
            return;
        }

        if (Disk.Look(Path) == PathKind.Folder && !_places.IsOursAlone())
        {
            // the files will go in one by one: no work for a result that has nowhere to go
            WriteGate.Try(Path);
        }

        if (!Disk.MakeFolder(_places.New))
        {
            throw new IOException($"{_places.New} is in the way: it is no work of pushsim");
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
        string path = System.IO.Path.Combine(_places.New, free);
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
        _places.PutInPlace();
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

    private void Discard()
    {
        _isBegun = false;
        _written.Clear();
        _places.Discard();
    }

    private static void RefuseOthers(string shown, string path)
    {
        string? wrong = Disk.Look(path) switch
        {
            PathKind.File => "is a file",
            PathKind.Link => "is a link, which could lead anywhere",
            PathKind.Other => "is no folder",
            _ => null,
        };
        if (wrong is not null)
        {
            throw new IOException($"{shown} {wrong}; give another folder with --out");
        }
    }

    private static void RefuseForeign(string shown, string path, bool force, Func<string, bool> mayBeThere)
    {
        if (!force && Disk.Look(path) == PathKind.Folder && OutputMark.Read(path) is null && !Disk.List(path).All(mayBeThere))
        {
            throw new IOException($"{shown} exists and is not an output of pushsim; give another with --out, or --force to write into it");
        }
    }

    // A free name for a file: that of a filled-in form, and of what the command reads, stays with it.
    private string Free(string name, bool isForm)
    {
        string free = name;
        for (int n = 2; _places.IsInput(free) || (isForm && Disk.Look(_places.Of(free)) != PathKind.None && !FolderPlaces.IsOurs(_places.Of(free), free, Before)); n++)
        {
            free = WriteGate.Numbered(name, "-", n);
        }

        if (free != name)
        {
            _places.TellOnce(name, $"{System.IO.Path.Combine(_ask.Path, name)} {(_places.IsInput(name) ? "is read by this command" : "is filled in")} and stays; the new one is {free}");
        }

        return free;
    }

    private void WriteMark(OutputState state) =>
        WriteGate.Replace(System.IO.Path.Combine(_places.New, OutputMark.Name), s => s.Write(Encoding.UTF8.GetBytes(new OutputMark(state, _ask.Source, [.. _written.Values]).Text)));
}
