using System.Globalization;

namespace PushSim.Tests.Measured;

/// <summary>A file of measurements beside this class, column by column; SOURCES.md there says whose they are.</summary>
internal sealed class MeasuredData
{
    private readonly Dictionary<string, double[]> _columns = [];

    private MeasuredData(string text)
    {
        string[] lines = text.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        string[] names = lines[0].Split(',');
        double[][] rows = [.. lines[1..].Select(l => l.Split(',').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray())];
        for (int i = 0; i < names.Length; i++)
        {
            _columns[names[i]] = [.. rows.Select(r => r[i])];
        }

        Rows = rows.Length;
    }

    /// <summary>Number of rows [1].</summary>
    public int Rows { get; }

    /// <summary>A column by its name [its unit].</summary>
    public double[] this[string column] => _columns[column];

    /// <summary>Reads a file by its name without ending.</summary>
    public static MeasuredData Read(string name)
    {
        using Stream stream = typeof(MeasuredData).Assembly.GetManifestResourceStream($"measured-{name}.csv") ?? throw new FileNotFoundException(name);
        using var reader = new StreamReader(stream);
        return new MeasuredData(reader.ReadToEnd());
    }
}
