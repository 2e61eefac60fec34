using PushSim.Scenarios.Logs;

namespace PushSim.Cli.Compare;

/// <summary>`pushsim compare LOG FILE`: a robot's log beside the run that it tells.</summary>
internal static class CompareCommand
{
    // Share of the log on which values are found unless said [1].
    private const double UsualShare = 0.5;

    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var log = new Argument<string>("LOG") { Description = "CSV with a column of time and any of command, side or wheel speeds, yaw rate, voltage, current, force; or a WAV of a buzzing turn." };
        var file = new Argument<string>("FILE") { Description = "Scenario file." };
        var identify = new Option<string[]>("--identify")
        {
            Description = "Key of a value that is found on the first part of the log, three at most, for example tyre.*.lateral_friction_ratio; repeatable.", HelpName = "KEY", DefaultValueFactory = _ => [],
        };
        var share = new Option<string?>("--first") { Description = "Share of the log on which values are found (default 0.5); errors are told of the rest.", HelpName = "SHARE" };
        var from = new Option<string?>("--from") { Description = "Seconds of the log at which it begins (default its first row).", HelpName = "S" };
        var to = new Option<string?>("--to") { Description = "Seconds of the log at which it ends (default its last row).", HelpName = "S" };
        var replay = new Option<string?>("--replay") { Description = "commands or wheels: what of the log is put in (default commands if it has them).", HelpName = "WHICH" };
        var rate = new Option<string?>("--rate") { Description = "Rows a second, of a log without times.", HelpName = "NUMBER" };
        var set = new SetOption();
        var common = new CommonOptions("Folder for plots and CSV (default pushsim-out/NAME-compare).");
        var command = new Command(
            "compare",
            "Sets a log beside the run that it tells.\n\nThe log's commands, or its measured wheels, are put in; how far off each other quantity is, is told.\n\n"
            + "Examples:\n  pushsim compare scenarios/logs/drive.csv scenarios/arc.toml\n"
            + "  pushsim compare drive.csv arc.toml --identify \"tyre.*.kinetic_friction\"\n  pushsim compare turn.wav scenarios/spot-bouncy-tyre.toml --from 2 --to 6")
        {
            log, file, identify, share, from, to, replay, rate,
        };
        set.AddTo(command);
        common.AddTo(command);
        CommonOptions.CheckText(share, text => Number(text) is >= 0.05 and <= 0.95 ? "" : "needs a number from 0.05 to 0.95");
        CommonOptions.CheckText(from, text => Number(text) is not null ? "" : "needs seconds");
        CommonOptions.CheckText(to, text => Number(text) is not null ? "" : "needs seconds");
        CommonOptions.CheckText(rate, FitArguments.RateComplaint);
        CommonOptions.CheckText(replay, text => text is "commands" or "wheels" ? "" : "takes commands or wheels");
        command.SetAction(parsed =>
        {
            string[] keys = parsed.GetValue(identify) ?? [];
            return keys.Length > LogStudy.MostKeys
                ? Complaint.OfCommandLine(error, $"--identify takes {LogStudy.MostKeys} keys at most, not {keys.Length}", "compare")
                : Run(new CompareRequest(
                    parsed.GetValue(log)!, parsed.GetValue(file)!, keys, Number(parsed.GetValue(share)) ?? UsualShare, Number(parsed.GetValue(from)), Number(parsed.GetValue(to)), parsed.GetValue(replay),
                    set.Read(parsed), common.Of(parsed))
                {
                    Rate = parsed.GetValue(rate) is string r && FitArguments.TryRate(r, out double perSecond) ? perSecond : null,
                });
        });
        return command;

        int Run(CompareRequest request) => Path.GetExtension(request.Log).Equals(".wav", StringComparison.OrdinalIgnoreCase)
            ? new SoundRun(request, output, error, cancel).Run()
            : new CompareRun(request, output, error, cancel).Run();
    }

    private static double? Number(string? text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;
}
