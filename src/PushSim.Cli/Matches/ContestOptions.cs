using System.CommandLine.Parsing;

namespace PushSim.Cli.Matches;

/// <summary>What names a drawn contest, the same for every command that draws matches: opponent, scene, label of the draws.</summary>
internal sealed class ContestOptions(OpponentOptions opponent)
{
    private readonly Option<string?> _label = new("--contest") { Description = "Whose draws to take: a label such as mole/badger, a pair of a ladder (default: the names of the two robots).", HelpName = "LABEL" };

    public void AddTo(Command command)
    {
        opponent.AddTo(command);
        command.Options.Add(_label);
    }

    /// <summary>The opponent named; null for none.</summary>
    public string? Opponent(CommandResult found) => opponent.Opponent(found);

    /// <summary>What was asked by them.</summary>
    public (string? Opponent, string? Scene, string? Label) Of(ParseResult parsed) => (opponent.Of(parsed).Opponent, opponent.Of(parsed).Scene, Label(parsed));

    /// <summary>Opponent and scene as limits of reading have them.</summary>
    public ReadOptions In(ParseResult parsed, ReadOptions options) => opponent.In(parsed, options);

    /// <summary>Label of the draws; null for the robots' names.</summary>
    public string? Label(ParseResult parsed) => parsed.GetValue(_label);
}
