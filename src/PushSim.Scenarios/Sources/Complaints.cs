namespace PushSim.Scenarios.Sources;

/// <summary>Complaints about files, as they are found.</summary>
internal class Complaints(ReadOptions options)
{
    // A hostile file could hold a mistake per key; nobody reads past this many.
    private const int MostProblems = 200;

    private static readonly HashSet<string> s_none = [];

    public ReadOptions Options { get; } = options;

    /// <summary>Paths of the tables that there may be several of, for example "wheel" and "floor.patch", whose headers take double brackets.</summary>
    public virtual IReadOnlySet<string> Lists => s_none;

    /// <summary>Complaints so far, in the order in which they were found.</summary>
    public List<Problem> Problems { get; } = [];

    /// <summary>Mistakes so far [1], those beyond the ones kept among <see cref="Problems"/> too.</summary>
    public int Errors { get; private set; }

    public void Error(Place place, string message, string help)
    {
        Errors++;
        Add(place, Severity.Error, message, help);
    }

    public void Warning(Place place, string message, string help) => Add(place, Severity.Warning, message, help);

    private void Add(Place place, Severity severity, string message, string help)
    {
        if (Problems.Count < MostProblems)
        {
            Problems.Add(new Problem(place.File.Name, place.Line, place.Column, severity, message, help)
            {
                SourceLine = place.File.Line(place.Line),
                Length = place.Length,
            });
        }
    }
}
