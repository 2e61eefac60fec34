using System.Text.RegularExpressions;

namespace PushSim.Scenarios.Notebook;

/// <summary>How the floor was at a pull: a word ("wiped", "dusty"), and what had gone over it since then, as far as that was counted.</summary>
/// <param name="Word">The word in lower case; empty if none was written.</param>
/// <param name="Pulls">Pulls since the floor was in that state [1]; null if they were not counted.</param>
/// <param name="Metres">Distance slid since then [m]; null if it was not measured.</param>
public sealed partial record FloorState(string Word, double? Pulls = null, double? Metres = null)
{
    /// <summary>What is taken where a count stands alone: "after 5 pulls" counts from a wiped floor.</summary>
    public const string Wiped = "wiped";

    /// <summary>Nothing was written.</summary>
    public static FloorState Unknown { get; } = new("");

    /// <summary>Reads "wiped", "dusty", "after 12 pulls", "wiped, 12 pulls", "dusty after 3.5 m".</summary>
    public static FloorState Of(string text)
    {
        string t = text.Trim().ToLowerInvariant();
        double? pulls = null, metres = null;
        foreach (Match m in Count().Matches(t))
        {
            double value = double.Parse(m.Groups[1].Value.Replace(',', '.'), CultureInfo.InvariantCulture);
            switch (m.Groups[2].Value)
            {
                case "mm":
                    metres = value * 1e-3;
                    break;
                case "cm":
                    metres = value * 1e-2;
                    break;
                case ['p', ..]:
                    pulls = value;
                    break;
                default:
                    metres = value;
                    break;
            }
        }

        string word = string.Join(' ', Joint().Split(Count().Replace(t, " ")).Where(w => w is not ("" or "after" or "and" or "since")));
        return new FloorState(word.Length == 0 && (pulls ?? metres) is not null ? Wiped : word, pulls, metres);
    }

    /// <summary>As it is written in the notebook.</summary>
    public override string ToString()
    {
        string count = Pulls is double p ? FormattableString.Invariant($"after {p:0.####} {(p == 1.0 ? "pull" : "pulls")}") : Metres is double m ? FormattableString.Invariant($"after {m:0.####} m") : "";
        string both = Pulls is not null && Metres is double more ? FormattableString.Invariant($" and {more:0.####} m") : "";
        return string.Join(' ', new[] { Word, count + both }.Where(w => w.Length > 0));
    }

    [GeneratedRegex(@"(?<![\p{L}\d.,])(\d+(?:[.,]\d+)?)\s*(pulls?|mm|cm|metres?|meters?|m)(?!\p{L})")]
    private static partial Regex Count();

    [GeneratedRegex(@"[\s,;+]+")]
    private static partial Regex Joint();
}
