using PushSim.Analysis.Sweep;

namespace PushSim.Words.Sweeps;

/// <summary>What is said of a sweep's inputs and points.</summary>
public static class SweepWords
{
    /// <summary>What is wrong with the text of an input.</summary>
    public static string Of(SweepFault fault) => fault.Kind switch
    {
        SweepFaultKind.Form => $"\"{fault.Text}\" is not KEY=FROM..TO, KEY=A,B,C or KEY=[\"A, B\", C]",
        SweepFaultKind.Range => $"\"{fault.Text}\" is no range of two different numbers",
        SweepFaultKind.Units => $"\"{fault.Text}\" has two units; write both ends in one",
        SweepFaultKind.Dash => $"a range has two dots: write {fault.Text}",
        SweepFaultKind.EmptyPlace => $"\"{fault.Text}\" has an empty place in its list",
        SweepFaultKind.Bracket => $"\"{fault.Text}\" opens a list by [ and does not end with ]",
        SweepFaultKind.Quote => $"\"{fault.Text}\" has a quote that is not closed before the next comma or the end",
        SweepFaultKind.Again => $"\"{fault.Text}\" stands beside another text of its key, so that each is one whole value; a range or a list goes alone",
        _ => $"more than {SweepInput.MostPoints} values for {fault.Text}",
    };

    /// <summary>Where a point lies: "gear_ratio = 20".</summary>
    public static string At(IReadOnlyList<SweepInput> inputs, SweepPoint point) => string.Join(", ", inputs.Select((input, i) => $"{input.Key} = {Told(input, point.Place[i])}"));

    /// <summary>Within what points tie.</summary>
    /// <param name="key">Key of the column.</param>
    public static string Ties(string key) => key switch
    {
        SweepTable.WinShare => "on the same draws, all points at once at 95 %",
        SweepTable.Ground => Text($"within {1000.0 * SweepTable.TieGround:0.#} mm or at the line alike"),
        SweepTable.GroundRate => Text($"within {100.0 * SweepTable.TieShare:0.#} % or {1000.0 * SweepTable.TieGround:0.#} mm/s"),
        _ => Text($"within {100.0 * SweepTable.TieShare:0.#} %"),
    };

    /// <summary>Points, matches, seed and time.</summary>
    /// <param name="points">Points that were run [1].</param>
    /// <param name="odds">Drawn matches at each; 0 for none [1].</param>
    /// <param name="seed">Their seed.</param>
    /// <param name="seconds">Time that it took [s].</param>
    public static string Computation(int points, long odds, ulong seed, double? seconds) => Text($"{points} points{(odds > 0 ? $", {odds} drawn matches at each, seed {seed}" : "")}{(seconds is double s ? Text($", {s:0.0} s") : "")}");

    // four digits are enough for reading
    private static string Told(SweepInput input, int place) =>
        input.Numbers is { } numbers ? PlainNumber.Of(numbers[place], 4) + (input.Unit.Length == 0 ? "" : " " + input.Unit) : Quoted(input.Texts[place]);

    /// <summary>A name as it may stand in a list: in quotes if it holds a comma.</summary>
    public static string Quoted(string name) => name.Contains(',', StringComparison.Ordinal) ? $"\"{name}\"" : name;
}
