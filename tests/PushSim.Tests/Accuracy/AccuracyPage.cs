using System.Globalization;
using System.Text;

namespace PushSim.Tests.Accuracy;

/// <summary>src/docs/accuracy.md out of the table: five digits at most, so that the text does not depend on the machine.</summary>
internal static class AccuracyPage
{
    public const string Command = "PUSHSIM_REWRITE=1 dotnet test tests/PushSim.Tests -c Release --filter FullyQualifiedName~Accuracy";

    public static string Text(IEnumerable<(string Title, AccuracyRow[] Rows)> groups)
    {
        var page = new StringBuilder();
        page.Append("# How accurate PushSim is\n\n");
        page.Append("Each row holds a value from outside PushSim, what PushSim's own code makes of the same case, and the largest difference that a test lets pass. ");
        page.Append("Difference and bound are shares of the outside value (of its unit, where it is zero); \"computed here\" means worked out apart from PushSim's code, \"read second-hand\" quoted by another text. ");
        page.Append(CultureInfo.InvariantCulture, $"A test computes every number and compares it with this page, which `{Command}` makes anew.\n");
        foreach ((string title, AccuracyRow[] rows) in groups)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n| what | outside value | PushSim | difference | bound | source |\n|---|---|---|---|---|---|\n");
            foreach (AccuracyRow row in rows)
            {
                string unit = row.Unit == "1" ? "" : $" [{row.Unit}]";
                string[] cells = [row.What + unit, row.OutsideText ?? Value(row.Outside), row.MeasuredText?.Invoke() ?? Value(row.Measured), Difference(row), Share(row.Bound / Scale(row)), row.Source];
                page.Append(CultureInfo.InvariantCulture, $"| {string.Join(" | ", cells)} |\n");
            }
        }

        return page.ToString();
    }

    /// <summary>Five significant digits.</summary>
    public static string Value(double value) => Math.Abs(value) is 0.0 or (>= 1e-3 and < 1e5)
        ? value.ToString("G5", CultureInfo.InvariantCulture)
        : value.ToString("0.####e0", CultureInfo.InvariantCulture);

    /// <summary>Signed difference as a share of the outside value: two digits, in percent from a ten-thousandth up; "0" only where no difference is let pass.</summary>
    public static string Difference(AccuracyRow row)
    {
        double share = (row.Measured - row.Outside) / Scale(row);
        return share == 0.0 && row.Bound == 0.0 ? "0" : Math.Abs(share) < row.Floor ? "< " + row.Floor.ToString("0e0", CultureInfo.InvariantCulture) : Share(share);
    }

    private static double Scale(AccuracyRow row) => row.Outside == 0.0 ? 1.0 : Math.Abs(row.Outside);

    private static string Share(double share) => Math.Abs(share) is >= 1e-4 or 0.0
        ? (100.0 * share).ToString("G2", CultureInfo.InvariantCulture) + (share == 0.0 ? "" : " %")
        : share.ToString("0.#e0", CultureInfo.InvariantCulture);
}
