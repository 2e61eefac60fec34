namespace PushSim.Cli.Completion;

/// <summary>An argument as help, completion and the man page see it.</summary>
/// <param name="Usage">What it is called, with brackets and dots.</param>
/// <param name="About">What it is.</param>
internal sealed record ArgumentShape(string Usage, string About);
