namespace PushSim.Files;

/// <summary>A file that we wrote.</summary>
/// <param name="Name">Its name in the folder.</param>
/// <param name="Hash">Hash of its content; empty where none is known.</param>
/// <param name="IsForm">Whether a person fills it in.</param>
public sealed record OutputEntry(string Name, string Hash, bool IsForm);
