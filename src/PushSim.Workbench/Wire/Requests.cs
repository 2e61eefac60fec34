namespace PushSim.Workbench.Wire;

internal sealed record ChangeRequest(string? Key, string? Text, bool Drag);

internal sealed record OpenRequest(string? Path);

internal sealed record ModeRequest(string? Mode);

internal sealed record StripsRequest(string[]? Keys);

internal sealed record SaveRequest(bool Over);

internal sealed record NumberReply(long Number);

internal sealed record SavedReply(IReadOnlyList<string> Saved);

internal sealed record PageReply(string Path, string? Url);

internal sealed record TextReply(string File, string Text);

/// <summary>Why a request was not done.</summary>
internal sealed record FaultReply(string Message, string Help = "", string? Key = null);

internal sealed record ConflictReply(string Message, string File, string Mine, string Theirs);

internal sealed record CardMessage(string Path, string Name, string Kind, string Title, string Question, string Changed);

internal sealed record HomeReply(string Folder, IReadOnlyList<CardMessage> Cards, IReadOnlyList<CardMessage> Shipped, IReadOnlyList<RowMessage> Starter);

internal sealed record NewRow(string? Key, string? Text);

internal sealed record NewRequest(NewRow[]? Rows);
