using System.Reflection;
using PushSim.Files;

namespace PushSim.Workbench.Start;

/// <summary>The shipped questions, out of the program: opening one puts it with its robots into a folder of its own, so that it can be changed and saved.</summary>
internal static class Examples
{
    /// <summary>What a page writes before the name of one.</summary>
    public const string Prefix = "shipped:";

    /// <summary>Folder that they are put into, in the folder that is served.</summary>
    public const string Folder = "pushsim-examples";

    private const string Root = "scenarios/";

    /// <summary>One for each scenario.</summary>
    public static IReadOnlyList<CardMessage> Cards { get; } =
    [
        .. Names().Where(n => n.IndexOf('/', StringComparison.Ordinal) < 0).Select(n => new CardMessage(Prefix + n, Path.GetFileNameWithoutExtension(n), "scenario", Path.GetFileNameWithoutExtension(n).Replace('-', ' '), Question(Text(n)!), "")),
    ];

    /// <summary>Puts one with its robots into the folder, where it is not there yet.</summary>
    /// <param name="folder">The folder that is served.</param>
    /// <param name="name">Its name, without <see cref="Prefix"/>.</param>
    /// <returns>Its path from the folder; null if there is none of that name.</returns>
    public static string? Put(string folder, string name)
    {
        if (!Cards.Any(c => c.Path == Prefix + name))
        {
            return null;
        }

        foreach (string file in Names().Where(n => n == name || n.StartsWith("robots/", StringComparison.Ordinal) || n.StartsWith("logs/", StringComparison.Ordinal)))
        {
            string path = Path.Combine(folder, Folder, file);
            if (Disk.Look(path) == PathKind.None)
            {
                Disk.MakeFolders(Path.GetDirectoryName(path)!);
                byte[] text = Encoding.UTF8.GetBytes(Text(file)!);
                WriteGate.Create(path, s => s.Write(text));
            }
        }

        return Path.Combine(Folder, name);
    }

    private static IEnumerable<string> Names() =>
        Assembly.GetExecutingAssembly().GetManifestResourceNames().Where(n => n.StartsWith(Root, StringComparison.Ordinal)).Select(n => n[Root.Length..].Replace('\\', '/')).Order(StringComparer.Ordinal);

    private static string? Text(string name)
    {
        Assembly own = Assembly.GetExecutingAssembly();
        string? resource = own.GetManifestResourceNames().FirstOrDefault(n => n.Replace('\\', '/') == Root + name);
        using Stream? stream = resource is null ? null : own.GetManifestResourceStream(resource);
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    private static string Question(string text)
    {
        string? line = text.Split('\n').FirstOrDefault(l => l.StartsWith("question", StringComparison.Ordinal));
        return line is null ? "" : line[(line.IndexOf('"', StringComparison.Ordinal) + 1)..line.LastIndexOf('"')];
    }
}
