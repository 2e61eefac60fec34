using PushSim.Analysis.Statistics;

namespace PushSim.Words.Terms;

/// <summary>Intervals in words, those with an open end among them.</summary>
public static class IntervalWords
{
    /// <summary>"0.69 to 0.73", "0.69 or more", "0.73 or less"; empty without ends.</summary>
    /// <param name="i">The interval; an end that is open or not known is not finite.</param>
    /// <param name="digits">Format of its ends.</param>
    public static string Of(Interval i, string digits = "0.000")
    {
        string low = i.Low.ToString(digits, CultureInfo.InvariantCulture);
        string high = i.High.ToString(digits, CultureInfo.InvariantCulture);
        return (double.IsFinite(i.Low), double.IsFinite(i.High)) switch
        {
            (true, true) => $"{low} to {high}",
            (true, false) => low + " or more",
            (false, true) => high + " or less",
            _ => "",
        };
    }
}
