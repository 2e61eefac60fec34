using System.CommandLine.Parsing;
using PushSim.Plotting.Report;

namespace PushSim.Cli.Shared;

/// <summary>`--against` and `--scene` of every command that reads a robot or a scenario: whom it meets, and where.</summary>
internal sealed class OpponentOptions(string against = OpponentOptions.InPlace)
{
    private const string InPlace = "Robot file of the opponent, in place of the scenario's own; FILE may then be a robot file too.";

    private readonly Option<string?> _against = new("--against") { Description = against, HelpName = "FILE" };
    private readonly Option<string?> _scene = new("--scene") { Description = "Scenario file with floor, shove and driving for two robot files (default: a plain shove).", HelpName = "FILE" };

    public void AddTo(Command command)
    {
        command.Options.Add(_against);
        command.Options.Add(_scene);
        command.Validators.Add(found =>
        {
            if (found.GetValue(_scene) is not null && found.GetValue(_against) is null)
            {
                found.AddError("--scene is for two robot files: name the opponent by --against");
            }
        });
    }

    /// <summary>The opponent named; null for none.</summary>
    public string? Opponent(CommandResult found) => found.GetValue(_against);

    /// <summary>What was asked by them.</summary>
    public (string? Opponent, string? Scene) Of(ParseResult parsed) => (parsed.GetValue(_against), parsed.GetValue(_scene));

    /// <summary>The same as limits of reading have it.</summary>
    public ReadOptions In(ParseResult parsed, ReadOptions options) => options with { Opponent = parsed.GetValue(_against), Scene = parsed.GetValue(_scene) };

    /// <summary>How the inputs of a page name them.</summary>
    public static IEnumerable<ReportInput> Given(string? opponent, string? scene) =>
    [
        .. PageReport.Given("--against", opponent is null ? null : PageReport.Shown(opponent)), .. PageReport.Given("--scene", scene is null ? null : PageReport.Shown(scene)),
    ];
}
