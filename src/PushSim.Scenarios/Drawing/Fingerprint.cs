using System.Security.Cryptography;
using System.Text;
using PushSim.Analysis.Chance;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Drawing;

/// <summary>Tells a contest from any other: what stands in its files, what is drawn and by which seed and label, and what the engine makes of one of its matches. It does not hang on the build: another one that
/// reads and computes the same has the same.</summary>
public static class Fingerprint
{
    private const int Digits = 16;

    // A match that is played for it, the same of all contests [1].
    private const long Probe = 0;

    /// <summary>Of one contest.</summary>
    /// <param name="read">The scenario as read, without errors.</param>
    /// <param name="source">Its matches.</param>
    public static string Of(DrawableResult read, FileMatchSource source)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{source.Contest.Seed}|{source.Contest.Label}|{source.Redrawn}\n");
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

        text.Append(EngineSelfTest.OfMatch(source, Probe));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..Digits];
    }
}
