namespace PushSim.Cli.Completion;

/// <summary>An option as completion and the man page see it.</summary>
/// <param name="Name">Name with its dashes.</param>
/// <param name="About">One sentence.</param>
/// <param name="Value">What its value is called; null for a flag.</param>
/// <param name="Words">Values it can have; empty if any.</param>
/// <param name="IsNeeded">Whether the command does nothing without it.</param>
/// <param name="Default">What it is where it is not given; empty where its sentence says it, or there is none.</param>
internal sealed record OptionShape(string Name, string About, string? Value, IReadOnlyList<string> Words, bool IsNeeded, string Default)
{
    /// <summary>Head under which it stands.</summary>
    public string Group => OptionGroup.Of(Name);

    /// <summary>Name with what its value is called.</summary>
    public string Usage => Value is null ? Name : $"{Name} {Value}";

    /// <summary>Its sentence with its default.</summary>
    public string Whole => Default.Length == 0 ? About : $"{About.TrimEnd('.')} (default {Default}).";

    /// <summary>Whether its value is a place in the file system.</summary>
    public bool IsPath => Value is "DIR" or "FILE" or "CSV";

    public bool IsFolder => Value == "DIR";
}
