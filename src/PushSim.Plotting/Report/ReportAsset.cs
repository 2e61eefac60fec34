using System.Reflection;
using System.Text;

namespace PushSim.Plotting.Report;

/// <summary>The style and scripts of the report page, for pages that show the same elsewhere.</summary>
public static class ReportAsset
{
    private static readonly string[] s_names = ["tokens.css", "report.css", "motion.js", "replay.js"];

    /// <summary>A module's text as a plain script: what it exports stands by its name.</summary>
    /// <param name="name">Its name.</param>
    internal static string Script(string name) => Text(name)!.Replace("\nexport ", "\n", StringComparison.Ordinal);

    /// <summary>The text of one of them; null for another name.</summary>
    public static string? Text(string name)
    {
        using Stream? stream = s_names.Contains(name) ? Assembly.GetExecutingAssembly().GetManifestResourceStream(name) : null;
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
