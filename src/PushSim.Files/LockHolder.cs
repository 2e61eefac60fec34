namespace PushSim.Files;

/// <summary>Who holds a lock: process, machine, command and when it started.</summary>
/// <param name="Process">Number of the process [1].</param>
/// <param name="Host">Name of the machine.</param>
/// <param name="Started">When the process started, for people.</param>
/// <param name="Ticks">The same as the system counts it since its own start, which no clock changes; 0 where it does not tell [1].</param>
/// <param name="Command">The command line.</param>
public sealed record LockHolder(int Process, string Host, string Started, long Ticks, string Command)
{
    private const int MostCommand = 200;

    /// <summary>This process.</summary>
    /// <param name="command">Its command line.</param>
    public static LockHolder Now(string command)
    {
        using var own = System.Diagnostics.Process.GetCurrentProcess();
        string plain = new([.. command.Where(c => !char.IsControl(c)).Take(MostCommand)]);
        return new LockHolder(own.Id, Environment.MachineName, own.StartTime.ToUniversalTime().ToString("yyyy-MM-dd HH:mm:ss'Z'", CultureInfo.InvariantCulture), TicksOf(own.Id), plain);
    }

    /// <summary>As text, a line each.</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"pid {Process}\nhost {Host}\nstarted {Started}\nticks {Ticks}\ncommand {Command}\n");

    /// <summary>For people.</summary>
    public string Words => string.Create(CultureInfo.InvariantCulture, $"\"{Command}\" (process {Process} on {Host}, started {Started})");

    /// <summary>Reads a text; null if it names nobody.</summary>
    public static LockHolder? Read(string text)
    {
        Dictionary<string, string> values = new(StringComparer.Ordinal);
        foreach (string line in text.Split('\n'))
        {
            int blank = line.IndexOf(' ', StringComparison.Ordinal);
            if (blank > 0)
            {
                values[line[..blank]] = new string([.. line[(blank + 1)..].Where(c => !char.IsControl(c))]);
            }
        }

        return values.TryGetValue("pid", out string? pid) && int.TryParse(pid, NumberStyles.None, CultureInfo.InvariantCulture, out int process)
            ? new LockHolder(process, values.GetValueOrDefault("host", ""), values.GetValueOrDefault("started", ""), long.TryParse(values.GetValueOrDefault("ticks"), NumberStyles.None, CultureInfo.InvariantCulture, out long ticks) ? ticks : 0, values.GetValueOrDefault("command", ""))
            : null;
    }

    /// <summary>Whether it is another process of this machine that still runs.</summary>
    public bool IsAlive()
    {
        if (Host != Environment.MachineName || Process == Environment.ProcessId)
        {
            return false;
        }

        try
        {
            using var process = System.Diagnostics.Process.GetProcessById(Process);
            long now = TicksOf(Process);
            return !process.HasExited && (Ticks == 0 || now == 0 || now == Ticks);
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    // proc(5): the 22nd field, counted behind the name in brackets
    private static long TicksOf(int process)
    {
        try
        {
            string stat = OperatingSystem.IsLinux() ? File.ReadAllText(string.Create(CultureInfo.InvariantCulture, $"/proc/{process}/stat")) : "";
            string[] fields = stat[(stat.LastIndexOf(')') + 1)..].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return fields.Length > 19 && long.TryParse(fields[19], NumberStyles.None, CultureInfo.InvariantCulture, out long ticks) ? ticks : 0;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return 0;
        }
    }
}
