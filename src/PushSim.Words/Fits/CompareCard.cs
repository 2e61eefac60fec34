using PushSim.Analysis.Compare;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>The answer card of a log beside its run.</summary>
public static class CompareCard
{
    /// <summary>The card.</summary>
    /// <param name="robot">Name of the robot.</param>
    /// <param name="errors">The differences.</param>
    /// <param name="isByWheels">Whether the measured wheels were put in; else the commands.</param>
    /// <param name="from">Where counting begins [s].</param>
    /// <param name="to">Where it ends [s].</param>
    /// <param name="identified">Each value that was found, as a file has it; none.</param>
    public static AnswerCard Of(string robot, IReadOnlyList<ChannelError> errors, bool isByWheels, double from, double to, IReadOnlyList<(string Key, string Value)> identified)
    {
        ChannelError[] furthest = CompareWords.FurthestFirst(errors);
        ChannelError first = furthest[0];
        string share = double.IsFinite(first.Share) ? Text($", {100.0 * first.Share:0.#} % of its range") : "";
        return new AnswerCard(Text($"{Phrase.Capital(CompareWords.Words(first.Channel))} of {robot} is furthest off the log: {CompareWords.Number(first.Rms)} {first.Channel.Unit} rms{share}."))
        {
            Facts = Text($"The run was {(isByWheels ? "turned by the wheels" : "driven by the commands")} of the log from {from:0.##} to {to:0.##} s.{CompareWords.Found(from, identified)}"),
            Numbers =
            [
                .. furthest.Take(AnswerCard.MostNumbers).Select(e => new CardNumber(
                    CompareWords.Words(e.Channel), Text($"{CompareWords.Number(e.Rms)} {e.Channel.Unit}"), double.IsFinite(e.Share) ? Text($"{100.0 * e.Share:0.#} %") : "",
                    Text($"worst {CompareWords.Number(e.Worst)} at {e.WorstAt:0.00} s"))),
            ],
            Sure = identified.Count == 0 ? "nothing of the run was taken from this log." : Text($"the values were found before {from:0.##} s, and only what comes after is counted."),
            Next = identified.Count == 0 ? "find a value on the first part of the log: --identify KEY." : "",
            Robots = [robot],
        };
    }
}
