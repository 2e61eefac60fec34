namespace PushSim.Cli.Completion;

/// <summary>An option as completion and the man page see it.</summary>
/// <param name="Name">Name with its dashes.</param>
/// <param name="About">One sentence.</param>
/// <param name="Value">What its value is called; null for a flag.</param>
/// <param name="Words">Values it can have; empty if any.</param>
internal sealed record OptionShape(string Name, string About, string? Value, IReadOnlyList<string> Words)
{
    /// <summary>Whether its value is a place in the file system.</summary>
    public bool IsPath => Value is "DIR" or "FILE" or "CSV";

    public bool IsFolder => Value == "DIR";
}
