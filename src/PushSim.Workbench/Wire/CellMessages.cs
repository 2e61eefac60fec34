namespace PushSim.Workbench.Wire;

/// <summary>The last seconds of a load cell, its pulls and its gaps; times from the left end of what is shown [s]. A break in the force is null.</summary>
internal sealed record TraceMessage
{
    public required string Port { get; init; }

    /// <summary>Whether more is to come.</summary>
    public required bool Listening { get; init; }

    public required double[] T { get; init; }

    /// <summary>Newton once the cell is tared.</summary>
    public required double?[] F { get; init; }

    public string Unit { get; init; } = "N";

    public required IReadOnlyList<TracePull> Pulls { get; init; }

    public required IReadOnlyList<TraceGap> Gaps { get; init; }

    /// <summary>What it waits for, and what the pulls say.</summary>
    public required string Words { get; init; }

    /// <summary>What to keep clear of.</summary>
    public string Caution { get; init; } = "";

    /// <summary>Readings so far [1].</summary>
    public long Readings { get; init; }

    /// <summary>The raw log; empty before the first line.</summary>
    public string Log { get; init; } = "";

    /// <summary>Whether it is tared and scaled, so that pulls count.</summary>
    public bool Tared { get; init; }

    /// <summary>Pulls that stand in the notebook [1].</summary>
    public int Noted { get; init; }
}

/// <summary>A pull, good or not: its number, from and to [s].</summary>
internal sealed record TracePull(int N, double From, double To, string Words, bool Good);

/// <summary>Nothing came between these times [s].</summary>
internal sealed record TraceGap(double From, double To);

internal sealed record PortsReply(IReadOnlyList<string> Ports);

/// <summary>A port to listen to; without a name it ends. With a tyre good pulls go into the notebook.</summary>
internal sealed record PortRequest(string? Name, int? Baud, string? Unit, string? Tyre)
{
    /// <summary>Weight or mass that is put on first, to scale by; null: none.</summary>
    public string? Known { get; init; }

    /// <summary>Floor under the tyre, as the garage calls it.</summary>
    public string? Floor { get; init; }

    /// <summary>How the floor is: "wiped", "dusty after 3 pulls".</summary>
    public string? State { get; init; }
}

internal sealed record ListeningReply(string? Name);

/// <summary>Pulls read off a display: lines, or the parts of one.</summary>
internal sealed record ReadingRequest(string? Text, string? Tyre, string? Load, string? Peak, string? Sliding, string? Note);

internal sealed record ReadingReply(int Added, ReadingsReply Readings);

/// <summary>The notebook of the garage; no file without a garage.</summary>
internal sealed record ReadingsReply(string? File, IReadOnlyList<ReadingRow> Rows, IReadOnlyList<string> Trend)
{
    /// <summary>What all pulls together tell of the tyres; null for too few.</summary>
    public SeasonMessage? Season { get; init; }
}

/// <summary>The card of a season, as `fit` has it: its answer, what changed since last time, how sure, and the tyres side by side.</summary>
internal sealed record SeasonMessage(string Sentence, string Changed, string Sure, string Next, IReadOnlyList<SeasonRow> Tyres);

/// <summary>A tyre in a state of the floor: its friction, what that is of, its interval.</summary>
internal sealed record SeasonRow(string Name, string Value, string Of, string Range);

/// <summary>A row of the notebook, in words.</summary>
internal sealed record ReadingRow(int Line, string Date, string Tyre, string Robot, string Floor, string Load, string Peak, string Sliding, string Log, string Note, bool LeftOut, string Why);
