namespace PushSim.Words.Matches;

/// <summary>What the places of one value's range say: where the winner flips, how far that is, where nobody moves.</summary>
public static class StripWords
{
    /// <summary>The line for one match at each place.</summary>
    /// <param name="places">The places, rising, with who wins there (0, 1, -1 for nobody; null where the match failed) and when it ends [s].</param>
    /// <param name="flips">Where the winner changes, between the places: the value, who wins below it and above it.</param>
    /// <param name="value">The value that holds.</param>
    /// <param name="tolerance">Its half-width; 0 for none.</param>
    /// <param name="unit">Unit of places, value and tolerance; empty for a pure number.</param>
    /// <param name="names">Names of the robots.</param>
    /// <param name="factor">The tolerance where it is a factor, above 1 [1]; 0 where it is a distance.</param>
    /// <param name="isRough">Whether the flips are still the middles between two places, half of their distance off.</param>
    public static string OfMatch(
        IReadOnlyList<(double Place, int? Winner, double End)> places, IReadOnlyList<(double Place, int Below, int Above)> flips, double value, double tolerance, string unit, (string Own, string Other) names, bool isRough = false, double factor = 0.0)
    {
        if (places.All(p => p.Winner is null))
        {
            return "no match can be played here";
        }

        if (flips.Count == 0)
        {
            return NoFlip(places, unit, names);
        }

        (double Place, int Below, int Above)[] turns = [.. flips.Where(f => f.Below >= 0 && f.Above >= 0)];
        List<string> told = [];
        if (turns.Length > 0)
        {
            double near = turns.MinBy(f => Math.Abs(f.Place - value)).Place;
            // as both are read
            double spare = Math.Abs(double.Parse(PlainNumber.Of(near, 3), CultureInfo.InvariantCulture) - value);
            string more = turns.Length > 1 ? string.Concat(turns.Where(f => f.Place != near).Take(2).Select(f => $" and {Shown(f.Place, unit)}")) : "";
            bool isInside = factor > 1.0 ? near >= value / factor && near <= value * factor : tolerance > 0.0 && spare <= tolerance;
            string safe = isInside ? $", inside the {(factor > 1.0 ? "x/ " + PlainNumber.Of(factor, 3) : "± " + Shown(tolerance, unit))}: not safe" : $": {Shown(spare, unit)} to spare";
            told.Add(isRough ? $"flips at about {Shown(near, unit)}{more}" : $"flips at {Shown(near, unit)}{more}{safe}");
        }

        // a band in which nobody moves, by its ends
        told.AddRange(Bands(flips).Select(b => b switch
        {
            (null, double to) => $"nobody moves below {Shown(to, unit)}",
            (double from, null) => $"nobody moves above {Shown(from, unit)}",
            (double from, double to) => $"nobody moves from {Shown(from, unit)} to {Shown(to, unit)}",
            _ => "",
        }).Where(w => w.Length > 0).Take(2));
        return string.Join("; ", told);
    }

    /// <summary>The line for shares of drawn matches.</summary>
    /// <param name="even">Where the share of wins passes a half, nearest to the value; null for nowhere.</param>
    /// <param name="share">Share of wins at the value [1]; null if it is not known yet.</param>
    /// <param name="unit">Unit of the place; empty for a pure number.</param>
    public static string OfShares(double? even, double? share, string unit)
    {
        string here = share is double s ? Text($"{100.0 * s:0} of 100 at your value") : "";
        string at = even is double e ? $"even at {Shown(e, unit)}" : "nowhere even";
        return here.Length == 0 ? at : $"{at}; {here}";
    }

    /// <summary>The line for a number that is no contest.</summary>
    /// <param name="words">What the number is.</param>
    /// <param name="low">Least over the range, as it is shown.</param>
    /// <param name="high">Largest over the range, as it is shown.</param>
    /// <param name="best">Place of the best; null where neither way is better.</param>
    /// <param name="unit">Unit of the place.</param>
    public static string OfNumber(string words, string low, string high, double? best, string unit) =>
        low == high ? $"{words} {low} at every place" : $"{words} {low} to {high}{(best is double b ? $"; best at {Shown(b, unit)}" : "")}";

    /// <summary>A place with its unit, in three digits.</summary>
    public static string Shown(double value, string unit) => $"{PlainNumber.Of(value, 3)} {unit}".TrimEnd();

    private static string NoFlip(IReadOnlyList<(double Place, int? Winner, double End)> places, string unit, (string Own, string Other) names)
    {
        int winner = places.First(p => p.Winner is not null).Winner!.Value;
        if (winner < 0)
        {
            return "nobody moves at any place";
        }

        (double place, int? _, double end) = places.Where(p => p.Winner == winner).MinBy(p => winner == 0 ? p.End : -p.End);
        return winner == 0 ? Text($"no flip; fastest win at {Shown(place, unit)}: {end:0.00} s") : Text($"no flip: {names.Other} wins; slowest at {Shown(place, unit)}: {end:0.00} s");
    }

    private static IEnumerable<(double? From, double? To)> Bands(IReadOnlyList<(double Place, int Below, int Above)> flips)
    {
        double? from = null;
        bool isOpen = flips[0].Below < 0;
        foreach ((double place, int below, int above) in flips)
        {
            if (below < 0 && isOpen)
            {
                yield return (from, place);
                isOpen = false;
            }

            if (above < 0)
            {
                (from, isOpen) = (place, true);
            }
        }

        if (isOpen)
        {
            yield return (from, null);
        }
    }
}
