namespace PushSim.Benchmarks.Measurements;

/// <summary>Ground and winners of drawn matches against the fine reference.</summary>
internal static class AccuracyPart
{
    private static readonly string[] s_files = ["shove-equals", "shove-six-four", "shove-off-centre", "shove-ramp-flat", "shove-heavy-grippy"];

    /// <summary>The rows; 2048 matches a file, short 256.</summary>
    public static IEnumerable<Figure> Of(bool isShort)
    {
        int count = isShort ? 256 : 2048;
        foreach (string file in s_files)
        {
            string path = $"scenarios/{file}.toml";
            FileAccuracy[] found = [.. FileBench.Of(Path.Combine(Contender.Here, path), count)];
            yield return new Figure("accuracy", $"{file}: ground off, median and 9 of 10 [mm]; winners that change of {count}; doubles, then floats", $"Benchmarks files {count} {path}", Said(found[0]), Said(found[1]), "");
        }
    }

    private static string Said(FileAccuracy a) => $"{a.Median:0.00}, {a.NineOfTen:0.0}; {a.Winners}";
}
