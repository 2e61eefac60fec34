using System.CommandLine.Parsing;

namespace PushSim.Cli.Matches;

/// <summary>What names a drawn contest, the same for every command that draws matches: opponent, scene, label of the draws.</summary>
internal sealed class ContestOptions(string against)
{
    private readonly Option<string?> _against = new("--against") { Description = against, HelpName = "FILE" };
    private readonly Option<string?> _scene = new("--scene") { Description = "Scenario file with floor, shove and driving for two robot files (default: a plain shove).", HelpName = "FILE" };
    private readonly Option<string?> _label = Label();

    /// <summary>`--contest` alone.</summary>
    public static Option<string?> Label() => new("--contest") { Description = "Whose draws to take: a label such as mole/badger, a pair of a ladder (default: the names of the two robots).", HelpName = "LABEL" };

    public void AddTo(Command command)
    {
        foreach (Option option in new Option[] { _against, _scene, _label })
        {
            command.Options.Add(option);
        }
    }

    public string? Opponent(CommandResult found) => found.GetValue(_against);

    public (string? Opponent, string? Scene, string? Label) Of(ParseResult parsed) => (parsed.GetValue(_against), parsed.GetValue(_scene), parsed.GetValue(_label));
}
