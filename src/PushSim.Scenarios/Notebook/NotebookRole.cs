namespace PushSim.Scenarios.Notebook;

/// <summary>What a column of the notebook holds.</summary>
internal enum NotebookRole
{
    When,
    Tyre,
    Robot,
    Mass,
    Motors,
    Floor,
    State,
    Load,
    Peak,
    Sliding,
    Source,
    Note,
    LeftOut,
}
