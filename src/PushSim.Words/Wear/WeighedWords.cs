using PushSim.Analysis.Wear;
using PushSim.Words.Tables;

namespace PushSim.Words.Wear;

/// <summary>What weighed tyres tell of the floor.</summary>
public static class WeighedWords
{
    /// <summary>How it was found.</summary>
    public const string Method = "The run tells how fast these tyres lose mass on a floor of the file's abrasiveness; the scale tells how fast they do. The law is in proportion, so their ratio corrects the floor. "
        + "The drum test of the tyres drops out of it: the factor is that of this floor with these tyres.";

    /// <summary>The answer.</summary>
    public static string Verdict(WeighedWear w) => w.IsSeen
        ? Text($"The floor's abrasiveness is {PlainNumber.Of(w.Abrasiveness.Value, 3)} (95 %: {PlainNumber.Of(w.Abrasiveness.Low, 2)} to {PlainNumber.Of(w.Abrasiveness.High, 2)}), {PlainNumber.Of(w.Abrasiveness.Value / w.Assumed, 3)} times the {PlainNumber.Of(w.Assumed, 3)} of the file.")
        : Text($"The scale cannot tell: {PlainNumber.Of(1e6 * w.Loss, 3)} mg in {w.Time:0} s is within its steps and the scatter of the rows; the abrasiveness is below {PlainNumber.Of(w.Abrasiveness.High, 2)} (95 %).");

    /// <summary>The card.</summary>
    public static AnswerCard Of(WeighedWear w) => new(Verdict(w))
    {
        Facts = WearWords.BesideRoads(1e12 * w.PerWork),
        Numbers =
        [
            new CardNumber("abrasiveness", Text($"{PlainNumber.Of(w.Abrasiveness.Value, 3)}"), Text($"file {PlainNumber.Of(w.Assumed, 3)}"), Text($"{PlainNumber.Of(w.Abrasiveness.Low, 2)} to {PlainNumber.Of(w.Abrasiveness.High, 2)}")),
            new CardNumber("wear per scrub", Text($"{PlainNumber.Of(1e12 * w.PerWork, 3)} mm³/kJ")),
            new CardNumber("mass lost", Text($"{PlainNumber.Of(1e6 * w.Loss, 3)} mg"), Text($"in {w.Time:0} s"), w.Count == 1 ? "one weighing" : Text($"{w.Count} weighings")),
        ],
        Next = w.IsSeen && w.Count > 1 ? "" : w.IsSeen ? "weigh once more: one row shows no scatter." : "drive longer, or take a finer scale.",
        HasPage = false,
        IsCautioned = false,
    };
}
