namespace PushSim.Words.Tables;

/// <summary>A command that tells more than an answer does. It stands on a line of its own that nothing breaks, and runs as it stands.</summary>
/// <param name="Tells">What it tells, in a few words.</param>
/// <param name="Line">The command line.</param>
public sealed record Suggestion(string Tells, string Line);
