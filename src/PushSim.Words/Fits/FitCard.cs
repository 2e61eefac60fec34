using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>The answer card of fitted tyres.</summary>
public static class FitCard
{
    /// <summary>The card.</summary>
    /// <param name="fits">The tyres.</param>
    /// <param name="verdict">The whole answer.</param>
    /// <param name="compared">How the tyres compare; null: not said.</param>
    public static AnswerCard Of(IReadOnlyList<TyreFit> fits, string verdict, TyreComparison? compared)
    {
        TyreFit[] best = [.. fits.OrderByDescending(f => f.ForModel.Kinetic)];
        string next = fits.FirstOrDefault(f => f.Cause is { IsLowerBound: true, IsInconsistent: false }) is { } open ? PullWords.Test(open.Cause) : fits.Any(f => f.Pulls < 3) ? "three pulls or more of each tyre." : "";
        return new AnswerCard(fits.Count == 1 ? One(fits[0]) : Sentence(verdict))
        {
            Facts = fits.Count == 1 ? Phrase.Capital(PullWords.Reason(fits[0].Cause)) + "." : Without(verdict[Sentence(verdict).Length..], next).Trim(),
            Numbers = fits.Count == 1 ? [.. Numbers(fits[0])] : [.. best.Take(AnswerCard.MostNumbers).Select(Row)],
            Sure = Sure(fits, compared),
            Next = next,
        };
    }

    // what is told as the next step is not told twice
    private static string Without(string facts, string next) => next.Length == 0 ? facts : facts.Replace(" " + next, "", StringComparison.Ordinal);

    private static string One(TyreFit f)
    {
        string bound = f.Cause is { IsLowerBound: true, IsInconsistent: false } ? " or more" : "";
        string slides = f.KineticFriction is Interval k ? Text($"slides at {k.Value:0.000}{bound}") : "was not seen sliding";
        return Text($"{f.Name} {slides} and lets go at {f.StaticFriction.Value:0.000}{(f.IsStaticLowerBound ? " or more" : "")} of its load.");
    }

    private static string Sentence(string verdict)
    {
        int end = verdict.IndexOf(". ", StringComparison.Ordinal);
        return end < 0 ? verdict : verdict[..(end + 1)];
    }

    private static IEnumerable<CardNumber> Numbers(TyreFit f)
    {
        if (f.KineticFriction is Interval k)
        {
            yield return new CardNumber("sliding grip", Text($"{k.Value:0.000}"), ForceWords.Scale(k.Value * f.Load), IntervalWords.Of(k));
        }

        yield return new CardNumber("grip when it lets go", Text($"{f.StaticFriction.Value:0.000}"), ForceWords.Scale(f.StaticFriction.Value * f.Load), IntervalWords.Of(f.StaticFriction));
        yield return new CardNumber("pulls used", f.Pulls.ToString(CultureInfo.InvariantCulture), "", "");
        yield return new CardNumber("load on the tyres", Text($"{f.Load:0.00} N"), ForceWords.Scale(f.Load), "");
    }

    private static CardNumber Row(TyreFit f) => f.KineticFriction is Interval k
        ? new CardNumber(f.Name, Text($"{k.Value:0.000}"), "sliding", IntervalWords.Of(k))
        : new CardNumber(f.Name, Text($"{f.StaticFriction.Value:0.000}"), "lets go", IntervalWords.Of(f.StaticFriction));

    private static string Sure(IReadOnlyList<TyreFit> fits, TyreComparison? compared)
    {
        string spread = compared?.RelativeSpread is double s && s > 0.0 ? Text($"pulls of one tyre differ by {100.0 * s:0.#} %. ") : "";
        string by = fits.Count == 1 ? fits[0].Cause.By switch
        {
            BindingKind.Tyre => "The tyre set the force.",
            BindingKind.Motor => "The motors set the force; the tyre grips at least that well.",
            _ => "Whether tyre or motors set the force is not known.",
        } : "";
        return (spread + by).Trim();
    }
}
