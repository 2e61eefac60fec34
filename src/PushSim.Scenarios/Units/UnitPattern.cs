using System.Text;
using System.Text.RegularExpressions;

namespace PushSim.Scenarios.Units;

/// <summary>
/// Quantity texts as a regular expression, for editors that check a file while it is typed. It is made from the table of units and takes what
/// <see cref="Quantity"/> takes, but for signs put where nobody puts them ("m-m" for mm).
/// </summary>
internal static class UnitPattern
{
    // What may stand between the parts of a product, before a unit and behind it.
    private const string Joint = @"[\s·⋅•∙*^()\-‐‑]*";

    // Between the parts of a product a full stop may stand too; nowhere else, where it would be a number's.
    private const string Product = Joint + @"(\." + Joint + ")?";
    private const char InWord = '\u0001';
    private const string Unsigned = @"\+?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?";
    private const string Signed = @"[+\-−]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?";
    private const string PlusMinus = @"\s*(±|\+/-|\+-)\s*";
    private const string Spread = @"(\s+(normal|uniform|triangular))?";
    private const string Exact = @"\s+exact";

    /// <summary>The pattern of a dimension's texts, with optional tolerance, from start to end.</summary>
    public static string Of(Dimension dimension)
    {
        string unit = Joint + "(" + string.Join('|', Alternatives(dimension)) + ")" + Joint;
        if (dimension == Dimension.Ratio)
        {
            return $@"^\s*{Signed}({unit})?({PlusMinus}{Unsigned}({unit})?{Spread}|{Exact})?\s*$";
        }

        string withUnit = $"{Signed}{unit}({PlusMinus}{Unsigned}({unit}|\\s*%)?{Spread}|{Exact})?";
        string unitBehind = $"{Signed}{PlusMinus}{Unsigned}{unit}{Spread}";
        return $@"^\s*({withUnit}|{unitBehind})\s*$";
    }

    // Spellings that match the same texts once joints are free appear once.
    private static IEnumerable<string> Alternatives(Dimension dimension) => UnitTable.Spellings(dimension).Select(Pattern).Distinct();

    private static string Pattern(string spelling)
    {
        // one character that stands for the word or its sign
        string s = spelling.Replace("ohm", "Ω", StringComparison.Ordinal);
        s = Regex.Replace(s, "(kg|g|lb|oz)f", "$1" + InWord + "f");
        var pattern = new StringBuilder();
        for (int i = 0; i < s.Length; i++)
        {
            pattern.Append(s[i] switch
            {
                ' ' => Product,
                InWord => Joint,
                '(' or ')' => "",
                '/' => @"\s*/" + Joint,
                ':' => @":\s*",
                // apart from the number, or it would be the number's last digit
                '1' when i == 0 => @"\s1",
                'u' when i == 0 => "[uµμ]",
                '2' => @"\^?[2²]",
                '3' => @"\^?[3³]",
                '"' => "[\"″”]",
                '\'' => "['′’]",
                '°' => @"[°º˚]\s*",
                'Ω' => "(ohm|Ω|\u2126)",
                char c => Regex.Escape(c.ToString()),
            });
        }

        return pattern.ToString();
    }
}
