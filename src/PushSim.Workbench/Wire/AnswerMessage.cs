namespace PushSim.Workbench.Wire;

/// <summary>What the open files give at their present values.</summary>
internal sealed record AnswerMessage
{
    public required long Number { get; init; }

    /// <summary>Whether it is that of other values, since the present ones cannot be read.</summary>
    public bool Old { get; init; }

    public string OldWords { get; init; } = "";

    public required string Sentence { get; init; }

    public string BeforeSentence { get; init; } = "";

    public string Reason { get; init; } = "";

    public IReadOnlyList<NumberMessage> Numbers { get; init; } = [];

    public string Sure { get; init; } = "";

    public string Next { get; init; } = "";

    /// <summary>"a", "b", "" for nobody; null where nobody can win.</summary>
    public string? Winner { get; init; }

    public IReadOnlyList<string> Cautions { get; init; } = [];

    public IReadOnlyList<CurveMessage> Curves { get; init; } = [];

    public IReadOnlyList<RibbonMessage> Ribbon { get; init; } = [];

    public IReadOnlyList<LineMessage> Lines { get; init; } = [];

    public RawJson Replay { get; init; }

    public RawJson BeforeReplay { get; init; }

    /// <summary>Whether the whole accuracy of the command was used, and a closer look taken.</summary>
    public bool Whole { get; init; }

    /// <summary>From the change to this answer [ms].</summary>
    public double Ms { get; init; }
}

internal sealed record NumberMessage(string Key, string Words, string Text, string Small, string Note, string BeforeWords);

internal sealed record CurveMessage(string Key, string Words, string Unit, IReadOnlyList<SeriesMessage> Series, IReadOnlyList<SeriesMessage> Before, IReadOnlyList<CurveLineMessage> Lines);

/// <summary>A curve: seconds, and values in the unit of its chart.</summary>
internal sealed record SeriesMessage(string Name, string Robot, double[] T, double[] Y);

internal sealed record CurveLineMessage(double Y, string Words, string Robot);

internal sealed record RibbonMessage(double From, double To, string Robot, string Limit, string Words);

internal sealed record LineMessage(double XM, string Words, string Robot);

/// <summary>A value that does not read.</summary>
internal sealed record ProblemMessage(long Number, string? Key, string Message, string Help, string File, int Line);
