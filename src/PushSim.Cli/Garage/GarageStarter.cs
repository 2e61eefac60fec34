using System.Reflection;
using PushSim.Files;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Notebook;

namespace PushSim.Cli.Garage;

/// <summary>The commented garage of `pushsim garage new`.</summary>
internal static class GarageStarter
{
    private const string Prefix = "Garage/";

    /// <summary>Writes it; what is there is never written over.</summary>
    public static int Write(string folder, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        using HeldLock held = FolderLock.Whole(folder, new LockAsk(folder, "garage new", message => error.WriteLine("pushsim: " + PlainText.Of(message)), cancel));
        (string Name, string Text)[] files =
        [
            .. Assembly.GetExecutingAssembly().GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(n => (n[Prefix.Length..].Replace("robots.", "robots/", StringComparison.Ordinal), Read(n))),
            (NotebookReader.FileName, NotebookWriter.HeadLine(',') + "\n"),
            (JsonSchema.FileName(PushSim.Scenarios.Keys.FileKind.Garage), JsonSchema.Shipped(PushSim.Scenarios.Keys.FileKind.Garage)),
            ("robots/" + JsonSchema.FileName(PushSim.Scenarios.Keys.FileKind.Robot), JsonSchema.Shipped(PushSim.Scenarios.Keys.FileKind.Robot)),
        ];
        string[] there = [.. files.Where(f => Disk.Look(Path.Combine(folder, f.Name)) != PushSim.Files.FileKind.None).Select(f => f.Name)];
        if (there.Length > 0)
        {
            throw new IOException($"{folder} already has {string.Join(", ", there)}; name another folder");
        }

        Disk.MakeFolders(Path.Combine(folder, GarageFolder.RobotFolder));
        output.WriteLine(PlainText.Of($"A garage to begin with is in {folder}."));
        foreach ((string name, string text) in files)
        {
            string path = Path.Combine(folder, name);
            WriteGate.Create(path, s => s.Write(Encoding.UTF8.GetBytes(text)));
            output.WriteLine("wrote " + PlainText.Of(path));
        }

        output.WriteLine("next: " + PlainText.Of(CommandLine.Of("garage", [], folder)));
        return ExitCode.Done;
    }

    private static string Read(string resource)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
