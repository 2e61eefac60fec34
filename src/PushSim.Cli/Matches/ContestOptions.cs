namespace PushSim.Cli.Matches;

/// <summary>What names a drawn contest, the same for every command that draws matches: opponent, scene, label of the draws.</summary>
internal sealed class ContestOptions(string against = OpponentOptions.InPlace, bool hasSecond = true) : OpponentOptions(against, hasSecond)
{
    private readonly Option<string?> _label = new("--contest") { Description = "Whose draws to take: a label such as mole/badger, a pair of a ladder (default: the names of the two robots).", HelpName = "LABEL" };

    public override void AddTo(Command command)
    {
        base.AddTo(command);
        command.Options.Add(_label);
    }

    /// <summary>Label of the draws; null for the robots' names.</summary>
    public string? Label(ParseResult parsed) => parsed.GetValue(_label);
}
