namespace PushSim.Workbench;

/// <summary>How the workbench is started.</summary>
public sealed record WorkbenchOptions
{
    /// <summary>The file to open; null: the start page.</summary>
    public string? File { get; init; }

    /// <summary>The folder whose files it shows.</summary>
    public string Folder { get; init; } = ".";

    /// <summary>Folder of the garage that names come from; null: the nearest one upwards.</summary>
    public string? Garage { get; init; }

    /// <summary>The port; 0: a free one [1].</summary>
    public int Port { get; init; }

    /// <summary>Whether it goes on after the last page is closed.</summary>
    public bool Stays { get; init; }

    /// <summary>Makes the files of a starter robot, the scenario first, and says what is wrong with what was asked, else nothing; null: none are made.</summary>
    public Func<StarterAsk, (IReadOnlyList<(string Name, string Text)> Files, string Wrong)>? Starter { get; init; }

    /// <summary>Writes the report page of a file that is open with its changes, and returns its path; null: none is written.</summary>
    public Func<string, Scenarios.Sources.ReadOptions, CancellationToken, string>? Page { get; init; }

    /// <summary>How long it waits after the last page was closed.</summary>
    public TimeSpan Wait { get; init; } = TimeSpan.FromMinutes(1);
}
