using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Drawing;

/// <summary>Tells whether finished matches are of the same files, read by the same version.</summary>
public static class Fingerprint
{
    private const int Digits = 16;

    private static string Version => typeof(Fingerprint).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";

    /// <summary>Of one scenario without errors and what is drawn in it.</summary>
    public static string Of(DrawableResult read)
    {
        var text = new StringBuilder();
        foreach (InputRow row in read.Read.Inputs)
        {
            // the folder does not matter: parts may come from machines that keep the files elsewhere
            string value = row.Key is "robot" or "opponent.robot" ? Path.GetFileName(row.Text) : row.Text;
            text.Append(row.Owner).Append('|').Append(row.Key).Append('|').Append(value).Append('\n');
        }

        foreach (TolerancedValue v in read.Scenario!.Values)
        {
            text.Append(CultureInfo.InvariantCulture, $"{v.Key}|{v.Part}|{v.OwnShare:R}|{v.Middle:R}|{v.Tolerance:R}|{v.Spread}\n");
        }

        return Of(text.ToString());
    }

    /// <summary>Of several contests in their order.</summary>
    public static string Of(IEnumerable<string> contests) => Of(string.Join('\n', contests));

    private static string Of(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Version + "\n" + text)))[..Digits];
}
