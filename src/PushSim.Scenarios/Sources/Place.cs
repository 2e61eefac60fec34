namespace PushSim.Scenarios.Sources;

/// <summary>A place in a file.</summary>
/// <param name="File">The file.</param>
/// <param name="Line">Line from 1, 0 for the whole file.</param>
/// <param name="Column">Column from 1, 0 for the whole file.</param>
/// <param name="Length">Characters of the thing, at least 1.</param>
internal readonly record struct Place(SourceFile File, int Line, int Column, int Length);
