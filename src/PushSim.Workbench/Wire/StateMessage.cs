namespace PushSim.Workbench.Wire;

/// <summary>All that a page shows but answers: the open files, their values, what was changed.</summary>
internal sealed record StateMessage
{
    private static readonly string s_session = Guid.NewGuid().ToString("N");

    /// <summary>Number of the last change; answers carry the number of the change that they answer [1].</summary>
    public required long Number { get; init; }

    /// <summary>New at each start, so that a page notices another one.</summary>
    public string Session { get; init; } = s_session;

    public string? File { get; init; }

    /// <summary>"scenario" or "robot".</summary>
    public string Kind { get; init; } = "";

    public string Title { get; init; } = "";

    public string Question { get; init; } = "";

    public IReadOnlyList<RobotMessage> Robots { get; init; } = [];

    public IReadOnlyList<PartMessage> SceneParts { get; init; } = [];

    /// <summary>Keys in the order of what matters most; empty until it was asked for.</summary>
    public IReadOnlyList<string> Matters { get; init; } = [];

    public StepMessage? Undo { get; init; }

    public StepMessage? Redo { get; init; }

    /// <summary>Values that differ from the files.</summary>
    public IReadOnlyList<ChangeMessage> Changes { get; init; } = [];

    /// <summary>How many of them are not saved [1].</summary>
    public int Unsaved { get; init; }

    public StepMessage? Pinned { get; init; }

    public OutsideMessage? Outside { get; init; }

    /// <summary>"match" or "odds".</summary>
    public string Mode { get; init; } = "match";
}

/// <summary>A robot.</summary>
internal sealed record RobotMessage(string Id, string Name, bool Yours, string File, DrawingMessage? Drawing, IReadOnlyList<PartMessage> Parts);

/// <summary>A part of a robot or of the scene with its values.</summary>
internal sealed record PartMessage(string Id, string Words, string Value, bool Changed, IReadOnlyList<RowMessage> Rows);

/// <summary>A piece of a track: shares of the way, values at its ends, and whether equal ways are equal factors.</summary>
internal sealed record TrackMessage(double From, double To, double Low, double High, bool Logarithmic);

/// <summary>One value.</summary>
internal sealed record RowMessage
{
    public required string Key { get; init; }

    public required string Words { get; init; }

    /// <summary>As the file has it, without tolerance.</summary>
    public required string Text { get; init; }

    public string Unit { get; init; } = "";

    public double? Value { get; init; }

    public double? Low { get; init; }

    public double? High { get; init; }

    /// <summary>Pieces of the slider's track, left to right.</summary>
    public IReadOnlyList<TrackMessage> Track { get; init; } = [];

    public bool Whole { get; init; }

    public ToleranceMessage? Tolerance { get; init; }

    public IReadOnlyList<string>? Choices { get; init; }

    public required SourceMessage Source { get; init; }

    public string Explain { get; init; } = "";

    public bool Changed { get; init; }

    /// <summary>The value before: of the pinned design, else of the file.</summary>
    public double? OldValue { get; init; }

    public RowErrorMessage? Error { get; init; }
}

/// <param name="Text">As the file has it, behind its mark.</param>
/// <param name="Value">Distance to the upper end [unit of the row].</param>
/// <param name="Mark">"±", or "x/" where the tolerance is a factor.</param>
internal sealed record ToleranceMessage(string Text, double Value, string Mark);

/// <summary>Where a value comes from: "file", "shelf", "estimate", "default" or "changed".</summary>
internal sealed record SourceMessage(string Kind, string Words, string File, int Line);

internal sealed record RowErrorMessage(string Message, string Help, string Text);

internal sealed record StepMessage(string Words);

internal sealed record ChangeMessage(string Key, string Words, string From, string To);

internal sealed record OutsideMessage(string File, string What, bool Both, string Mine, string Theirs);
