namespace PushSim.Workbench.Wire;

/// <summary>What the answer would be at the places of one value's range.</summary>
internal sealed record StripMessage
{
    public required long Number { get; init; }

    public required string Key { get; init; }

    /// <summary>"match": one match a place; "odds": shares of drawn matches; "number": an answer that is no contest.</summary>
    public required string Mode { get; init; }

    public required IReadOnlyList<StripPoint> Points { get; init; }

    public FlipMessage? Flip { get; init; }

    /// <summary>Every place where the answer changes sides, rising.</summary>
    public IReadOnlyList<double> Flips { get; init; } = [];

    public string Words { get; init; } = "";

    public double? BeforeX { get; init; }

    /// <summary>Whether nothing more will come for this value.</summary>
    public bool Done { get; init; }
}

/// <summary>One place: its value in the unit of the row, a height from -1 (the other wins fastest) to 1, "win", "lose", "nobody", "failed" or "value".</summary>
internal sealed record StripPoint(double X, double Height, string State, double? Share = null, double? ShareLow = null, double? ShareHigh = null, string? Short = null);

internal sealed record FlipMessage(double X, string Words);

/// <summary>Drawn matches so far.</summary>
internal sealed record OddsMessage
{
    public required long Number { get; init; }

    public required long Matches { get; init; }

    public long Win { get; init; }

    public long Lose { get; init; }

    public long Stalemate { get; init; }

    /// <summary>Ends of the share of wins, 95 % sure [1].</summary>
    public double Low { get; init; }

    public double High { get; init; }

    public double? BeforeShare { get; init; }

    public string Sentence { get; init; } = "";

    public string Sure { get; init; } = "";

    public string Next { get; init; } = "";

    public HistogramMessage? Histogram { get; init; }

    public IReadOnlyList<string> Doubts { get; init; } = [];

    public IReadOnlyList<IntervalMessage> History { get; init; } = [];

    public bool Done { get; init; }

    /// <summary>Since the change [ms].</summary>
    public double Ms { get; init; }
}

/// <summary>How far matches gained ground: counts of equal stretches from low to high [m].</summary>
internal sealed record HistogramMessage(double Low, double High, IReadOnlyList<int> Counts);

internal sealed record IntervalMessage(long Matches, double Low, double High);

internal sealed record CloserMessage(long Number, string Words);
