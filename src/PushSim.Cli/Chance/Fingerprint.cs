using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using PushSim.Scenarios;
using PushSim.Scenarios.Drawing;

namespace PushSim.Cli.Chance;

/// <summary>Tells whether finished matches are of the same files.</summary>
internal static class Fingerprint
{
    private const int Digits = 16;

    public static string Of(DrawableResult read)
    {
        var text = new StringBuilder();
        foreach (InputRow row in read.Read.Inputs)
        {
            text.Append(row.Owner).Append('|').Append(row.Key).Append('|').Append(row.Text).Append('\n');
        }

        foreach (TolerancedValue v in read.Scenario!.Values)
        {
            text.Append(CultureInfo.InvariantCulture, $"{v.Key}|{v.Part}|{v.OwnShare:R}|{v.Middle:R}|{v.Tolerance:R}|{v.Spread}\n");
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..Digits];
    }
}
