using System.CommandLine.Parsing;
using PushSim.Plotting.Report;

namespace PushSim.Cli.Shared;

/// <summary>`--against` and `--scene` of every command that reads a robot or a scenario: whom it meets, and where.</summary>
internal class OpponentOptions(string against = OpponentOptions.InPlace, bool hasSecond = true)
{
    protected const string InPlace = "Robot file of the opponent, in place of the scenario's own; FILE may then be a robot file too.";

    private readonly Option<string?> _against = new("--against") { Description = against, HelpName = "FILE" };
    private readonly Argument<string?> _second = new("OPPONENT") { Description = "The same as --against.", Arity = ArgumentArity.ZeroOrOne };
    private readonly Option<string?> _scene = new("--scene") { Description = "Scenario file with floor, shove and driving for two robot files (default: a plain shove).", HelpName = "FILE" };

    public virtual void AddTo(Command command)
    {
        if (hasSecond)
        {
            command.Arguments.Add(_second);
        }

        command.Options.Add(_against);
        command.Options.Add(_scene);
        command.Validators.Add(found =>
        {
            if (hasSecond && found.GetValue(_second) is not null && found.GetValue(_against) is not null)
            {
                found.AddError("the opponent is named twice: once behind the robot, once by --against");
            }

            if (found.GetValue(_scene) is not null && Opponent(found) is null)
            {
                found.AddError("--scene is for two robot files: name the opponent by --against");
            }
        });
    }

    /// <summary>The opponent named; null for none.</summary>
    public string? Opponent(CommandResult found) => found.GetValue(_against) ?? (hasSecond ? found.GetValue(_second) : null);

    /// <summary>What was asked by them.</summary>
    public (string? Opponent, string? Scene) Of(ParseResult parsed) => (Opponent(parsed.CommandResult), parsed.GetValue(_scene));

    /// <summary>The same as limits of reading have it.</summary>
    public ReadOptions In(ParseResult parsed, ReadOptions options) => options with { Opponent = Opponent(parsed.CommandResult), Scene = parsed.GetValue(_scene) };

    /// <summary>How the inputs of a page name them.</summary>
    public static IEnumerable<ReportInput> Given(string? opponent, string? scene) =>
    [
        .. CommandPage.Given("--against", opponent is null ? null : CommandPage.Shown(opponent)), .. CommandPage.Given("--scene", scene is null ? null : CommandPage.Shown(scene)),
    ];
}
