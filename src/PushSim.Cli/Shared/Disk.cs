namespace PushSim.Cli.Shared;

/// <summary>What an <see cref="OutputFolder"/> asks of the disk; tests put one here that fails.</summary>
internal class Disk
{
    private static readonly AsyncLocal<Disk?> s_inTest = new();
    private static readonly Disk s_real = new();

    /// <summary>The one to use.</summary>
    public static Disk Now => s_inTest.Value ?? s_real;

    /// <summary>Replaces it for the code that the caller runs; null: the real one.</summary>
    public static void Use(Disk? disk) => s_inTest.Value = disk;

    public virtual Stream Create(string path) => File.Create(path);

    public virtual void Move(string from, string to) => File.Move(from, to, overwrite: true);

    public virtual void Delete(string path) => File.Delete(path);
}
