namespace PushSim.Cli.Tests;

/// <summary>A folder that goes with the test.</summary>
internal sealed class ScratchFolder : IDisposable
{
    public ScratchFolder() => Directory.CreateDirectory(Path);

    public string Path { get; } = System.IO.Path.Combine(System.IO.Path.GetTempPath(), "pushsim test " + Guid.NewGuid().ToString("N"));

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
