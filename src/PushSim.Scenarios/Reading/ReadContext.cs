using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>What one reading gathers over all its files.</summary>
internal sealed class ReadContext(ReadOptions options) : Complaints(options)
{
    private static readonly Lazy<HashSet<string>> s_lists = new(() => [.. new[] { FileKind.Robot, FileKind.Scenario }.SelectMany(KeySection.Of).Where(s => s.Key?.Kind == KeyKind.Tables).Select(s => s.Name)]);

    private GarageFolder? _garage;
    private SourceFile? _garageFile;
    private bool _isGarageSought;
    private bool _isGarageTold;

    /// <inheritdoc/>
    public override IReadOnlySet<string> Lists => s_lists.Value;

    /// <summary>What was converted or estimated, in sentences.</summary>
    public List<string> Notes { get; } = [];

    /// <summary>What was taken for granted of a log beside the files.</summary>
    public List<string> Remarks { get; } = [];

    /// <summary>The numbers that the notes tell of, each with its error.</summary>
    public List<DerivedValue> Derived { get; } = [];

    /// <summary>Every file that was opened: its name in messages, and where it lies, links followed.</summary>
    public List<(string Name, string Path)> Files { get; } = [];

    /// <summary>Every value that was read.</summary>
    public List<InputRow> Inputs { get; } = [];

    /// <summary>Names of the scenario's variants.</summary>
    public IReadOnlyList<string> Variants { get; set; } = [];

    /// <summary>Kinds of parts of which one has no name, so that nothing can refer to it.</summary>
    public HashSet<string> Unnamed { get; } = [];

    /// <summary>True once a file could not be opened or read at all.</summary>
    public bool CannotRead { get; set; }

    /// <summary>Values that stand in place of those of the file being read; null for none.</summary>
    public Overrides? Overrides { get; set; }

    /// <summary>Values set anew by whoever reads, before those of the files; empty for none.</summary>
    public IReadOnlyList<(string Path, TomlNode Value)> Set { get; init; } = [];

    /// <summary>Whose values are read: "" for scenario, "robot" or "opponent".</summary>
    public string Owner { get; set; } = "";

    /// <summary>Notes which values may be drawn; null when a file is only read.</summary>
    public DrawRecorder? Recorder { get; init; }

    /// <summary>Drawn values by slot [SI]; null when the files' middle values are read. Checks of the file's form are left out then, since they passed.</summary>
    public double[]? Drawn { get; init; }

    /// <summary>Material of the shelf for the tyres of the robot being read; see <see cref="ReadOptions.TyreMaterial"/>.</summary>
    public string? TyreMaterial { get; set; } = options.TyreMaterial;

    /// <summary>Tyre put on the robot being read; see <see cref="ReadOptions.Tyre"/>.</summary>
    public TyreChange? Tyre { get; set; } = options.Tyre;

    /// <summary>The garage that names come from; null if there is none.</summary>
    public GarageFolder? Garage
    {
        get
        {
            if (!_isGarageSought)
            {
                // that in which the first file lies goes before that of the current folder
                string? first = Options.Garage is null && Files.Count > 0 ? Path.GetDirectoryName(Files[0].Path) : null;
                _garage = (first is null ? null : GarageFolder.Above(first)) ?? GarageFolder.Of(Options.Garage);
                _isGarageSought = Options.Garage is not null || Files.Count > 0;
            }

            return _garage;
        }
    }

    /// <summary>The tables of the garage under a key, from a tree of their own, so that two robots never share one; empty without a garage or such tables.</summary>
    /// <param name="key">"tyre", "floor" or "rival".</param>
    public IReadOnlyList<TomlTable> OfGarage(string key)
    {
        if (Garage is not GarageFolder garage)
        {
            return [];
        }

        // what is wrong with the file is told once
        _garageFile ??= FileLoader.Load(this, garage.File, GarageFolder.Shown(garage.File), null) ?? new SourceFile(GarageFolder.FileName, "");
        TomlTable? tree = TomlTree.Parse(_isGarageTold ? new Complaints(Options) : this, _garageFile);
        _isGarageTold = true;
        return tree?.Find(key)?.Value is TomlArray list ? [.. list.Items.OfType<TomlTable>()] : [];
    }

    /// <summary>A derived number: a note, and a row of what `check --derived` prints.</summary>
    public void Note(string text, string error)
    {
        Notes.Add(text);
        Derived.Add(new DerivedValue(text, error));
    }
}
