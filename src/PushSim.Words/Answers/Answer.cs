namespace PushSim.Words.Answers;

/// <summary>One number that a run can answer: the single place that knows its key, words, unit, manoeuvres, better way, digits, and how to read it from a result.</summary>
/// <param name="Key">Key in JSON, CSV, `ask` and --ask, with the unit as its last part.</param>
/// <param name="Words">Plain words.</param>
/// <param name="Unit">Unit on the screen; empty for a pure number.</param>
/// <param name="Digits">Digits after the point that it deserves on the screen [1].</param>
/// <param name="Better">Which way it is better.</param>
/// <param name="Of">Its value in the unit of the key; null where it does not apply.</param>
public sealed record Answer(string Key, string Words, string Unit, int Digits, Better Better, Func<RunResult, double?> Of) : Measure(Key, Words, Unit, Digits, Better)
{
    /// <summary>Manoeuvres that it belongs to; empty for all.</summary>
    public IReadOnlyList<ManoeuvreKind> Manoeuvres { get; init; } = [];

    /// <summary>The opponent's value; null where there is none to tell.</summary>
    public Func<RunResult, double?> OfOpponent { get; init; } = _ => null;

    /// <summary>Whether scripts find it in the opponent's block too.</summary>
    public bool IsToldOfOpponent { get; init; }

    /// <summary>Whether this is the opponent's value.</summary>
    public bool IsOpponents { get; init; }

    /// <summary>Words that say more of one result; null: <see cref="Measure.Words"/>.</summary>
    public Func<RunResult, string>? WordsOf { get; init; }

    /// <summary>The peak that it is, with its moment and limit, of a robot's answers; null: it is none.</summary>
    public Func<RunAnswers, Peak?>? PeakOf { get; init; }

    /// <summary>Whether the screen's table leaves it out: it is for scripts.</summary>
    public bool IsForScripts { get; init; }

    /// <summary>Whether it belongs to a manoeuvre.</summary>
    public bool IsOf(ManoeuvreKind kind) => Manoeuvres.Count == 0 || Manoeuvres.Contains(kind);

    /// <summary>Whether less of it is better only of a robot that is to stay where it is.</summary>
    public bool IsForStaying { get; init; }

    /// <summary>Which way it is better in a manoeuvre.</summary>
    public Better BetterIn(ManoeuvreKind kind) => IsForStaying && ManoeuvreTraits.Of(kind) is { Family: not ManoeuvreFamily.Hold, IsOnTheSpot: false } ? Better.Neither : Better;

    /// <summary>Words for a result.</summary>
    public string WordsIn(RunResult result) => WordsOf?.Invoke(result) ?? Words;
}
