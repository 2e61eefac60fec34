using System.Collections.Concurrent;

namespace PushSim.Files;

/// <summary>The real paths of all that a command read: none of them may be removed or written over by it.</summary>
public static class InputLog
{
    private static readonly AsyncLocal<ConcurrentDictionary<string, bool>?> s_now = new();

    /// <summary>Begins a log for the code that the caller runs.</summary>
    public static void Begin() => s_now.Value = new(StringComparer.Ordinal);

    /// <summary>Whether the command read this file.</summary>
    /// <param name="path">Its path; links on it are followed.</param>
    public static bool Has(string path) => s_now.Value is { IsEmpty: false } read && read.ContainsKey(RealPath.Of(path));

    internal static void Add(string realPath) => s_now.Value?.TryAdd(realPath, true);
}
