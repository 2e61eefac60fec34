using System.Text.RegularExpressions;

namespace PushSim.Scenarios.Logs;

/// <summary>
/// The time of arrival that a terminal program writes before each line: "14:03:22.123 -> 15.75 g", "[14:03:22.123] 15.75", "2026-03-01 14:03:22.123 15.75", "12.345 -> 15.75". It is taken
/// for the time where the line has none of its own.
/// </summary>
internal static partial class LogStamp
{
    /// <summary>Name of the column that it makes.</summary>
    public const string Name = "received";

    /// <summary>Takes it off a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="stamp">The time as it stands; empty without one.</param>
    /// <param name="body">What follows; the whole line without one.</param>
    public static bool TryTake(string line, out string stamp, out string body)
    {
        (stamp, body) = ("", line);

        // a cheap look first: nearly all lines of nearly all logs have none
        int at = line.AsSpan().IndexOfAnyExcept(' ');
        if (at < 0 || (line[at] != '[' && !char.IsAsciiDigit(line[at])))
        {
            return false;
        }

        Match m = Stamp().Match(line);
        if (!m.Success)
        {
            return false;
        }

        (stamp, body) = (m.Groups["t"].Value.Trim().Replace(',', '.'), m.Groups["rest"].Value);
        return true;
    }

    [GeneratedRegex(@"^\s*(?:(?<t>(?:\d{4}-\d\d-\d\d[ T])?\d{1,2}:\d\d:\d\d(?:[.,]\d+)?|\d+(?:\.\d+)?)\s*(?:->|→|=>|>)\s*|\[\s*(?<t>(?:\d{4}-\d\d-\d\d[ T])?\d{1,2}:\d\d:\d\d(?:[.,]\d+)?|\d+\.\d+)\s*\]\s*|(?<t>\d{4}-\d\d-\d\d[ T]\d{1,2}:\d\d:\d\d(?:[.,]\d+)?)[ ]+)(?<rest>.*)$", RegexOptions.ExplicitCapture | RegexOptions.Singleline)]
    private static partial Regex Stamp();
}
