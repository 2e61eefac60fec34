using PushSim.Files;

namespace PushSim.Workbench.Start;

/// <summary>The folder that is served: its robots and scenarios as cards, and nothing outside it, whatever dots or links say.</summary>
internal sealed class HomeFolder(string folder, string? garage = null)
{
    // Files and folders below it that are looked at, and how deep [1].
    private const int MostFiles = 200;
    private const int MostDepth = 2;

    private readonly string _real = RealPath.Of(folder);

    /// <summary>The folder with every link on its path followed.</summary>
    public string Real => _real;

    /// <summary>The way to a file that a page names; null if it does not lie in the folder.</summary>
    /// <param name="path">Its path from the folder.</param>
    public string? Inside(string path)
    {
        if (path.Length is 0 or > 4096 || Path.IsPathRooted(path) || path.Contains('\0', StringComparison.Ordinal) || path.Split('/', '\\').Contains(".."))
        {
            return null;
        }

        string full = folder is "." ? path : Path.Combine(folder, path);
        try
        {
            using OpenedFile file = ReadGate.Open(full, new OpenAsk { Root = _real });
            return file.State is OpenState.Open or OpenState.NotThere && RealPath.IsInside(_real, RealPath.Of(full)) ? full : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>What can be opened in it.</summary>
    public IReadOnlyList<CardMessage> Cards()
    {
        List<string> files = [];
        Look("", 0, files);
        return [.. files.Select(Card).OfType<CardMessage>()];
    }

    private CardMessage? Card(string path)
    {
        ReadResult read = ScenarioReader.Check(Path.Combine(folder, path), new ReadOptions { Garage = garage });
        string name = Path.GetFileNameWithoutExtension(path);
        string mistakes = read.HasErrors ? "has mistakes" : "";
        return read.Scenario is { } scenario ? new CardMessage(path, name, "scenario", scenario.Name, scenario.Question, "")
            : read.Robot is { } robot ? new CardMessage(path, name, "robot", robot.Name, "", "")
            : read.Inputs.Any(i => i.Key is "chassis.mass" or "manoeuvre.kind") ? new CardMessage(path, name, read.Inputs.Any(i => i.Key == "manoeuvre.kind") ? "scenario" : "robot", name, mistakes, "") : null;
    }

    private void Look(string below, int depth, List<string> files)
    {
        IReadOnlyList<string> names;
        try
        {
            names = Disk.List(Path.Combine(folder, below));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return;
        }

        foreach (string name in names.Where(n => n[0] != '.'))
        {
            string path = below.Length == 0 ? name : Path.Combine(below, name);
            FileKind kind = Disk.Look(Path.Combine(folder, path));
            if (kind == FileKind.File && name.EndsWith(".toml", StringComparison.Ordinal) && files.Count < MostFiles)
            {
                files.Add(path);
            }
            else if (kind == FileKind.Folder && depth < MostDepth && name is not ("bin" or "obj" or "node_modules"))
            {
                Look(path, depth + 1, files);
            }
        }
    }
}
