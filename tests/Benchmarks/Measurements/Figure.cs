namespace PushSim.Benchmarks.Measurements;

/// <summary>A row of the table of figures.</summary>
/// <param name="Part">Part of the measurements that it belongs to.</param>
/// <param name="What">What was measured, with its unit.</param>
/// <param name="Command">The command.</param>
/// <param name="Base">Value before; empty if there is none.</param>
/// <param name="Own">Value now.</param>
/// <param name="Ratio">How many times better now; empty if that is not asked.</param>
internal sealed record Figure(string Part, string What, string Command, string Base, string Own, string Ratio)
{
    /// <summary>A cost, of which less is better.</summary>
    public static Figure OfCost(string part, string what, string command, double before, double own, string form = "0.00") =>
        new(part, what, command, before.ToString(form), own.ToString(form), (before / own).ToString("0.00"));

    /// <summary>The row as Markdown.</summary>
    public override string ToString() => $"| {Part} | {What} | {(Command.Length == 0 ? "" : $"`{Command}`")} | {Base} | {Own} | {Ratio} |";
}
