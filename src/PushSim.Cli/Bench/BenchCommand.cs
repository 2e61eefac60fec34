using PushSim.Scenarios.Bench;
using PushSim.Scenarios.Logs;

namespace PushSim.Cli.Bench;

/// <summary>`pushsim bench`: listens to a load cell.</summary>
internal static class BenchCommand
{
    private const string Examples =
        "Examples:\n  pushsim bench --port /dev/ttyUSB0 --baud 115200 --tyre soft --state wiped\n"
        + "  pushsim bench --port COM4 --known \"200 g\" --tyre soft --load \"1360 gf\"\n"
        + "  pushsim bench - --rate 80 --unit gf --json < lines.txt";

    public static Command Create(TextWriter output, TextWriter error, TextReader? person, CancellationToken cancel)
    {
        var from = new Argument<string?>("LINES") { Description = "- for lines on standard input.", Arity = ArgumentArity.ZeroOrOne };
        var port = new Option<string?>("--port") { Description = "Serial port of the cell's board, for example /dev/ttyUSB0 or COM4.", HelpName = "NAME" };
        Option<long> baud = CommonOptions.Whole("--baud", "N", "Bits a second of the port.", 115200, 50, 4_000_000);
        var known = new Option<string?>("--known") { Description = "Scale by a known mass: tare, put it on, take it off.", HelpName = "MASS" };
        var tare = new Option<string?>("--tare") { Description = "Reading of the slack cell (default: the first quiet second).", HelpName = "FORCE" };
        var unit = new Option<string?>("--unit") { Description = "Unit of force of lines that name none: N, gf, kgf, lbf, ozf, mV.", HelpName = "UNIT" };
        var calibration = new Option<string?>("--calibration") { Description = "Of a cell in mV, e.g. \"25 gf/mV\".", HelpName = "FORCE/mV" };
        var rate = new Option<string?>("--rate") { Description = "Readings a second, of lines without times.", HelpName = "NUMBER" };
        var flip = new Option<bool>("--flip") { Description = "The cell's sign is reversed." };
        var tyre = new Option<string?>("--tyre") { Description = "Tyre under test: good pulls go into the notebook.", HelpName = "NAME" };
        var floor = new Option<string?>("--floor") { Description = "Floor, as the garage calls it.", HelpName = "NAME" };
        var state = new Option<string?>("--state") { Description = "How the floor is: wiped, dusty, \"wiped, 12 pulls\".", HelpName = "TEXT" };
        var load = new Option<string?>("--load") { Description = "Load on the tested tyres, e.g. \"1360 gf\".", HelpName = "FORCE" };
        var robot = new Option<string?>("--robot") { Description = "Robot file or name: its mass and motors are noted, its weight is the load.", HelpName = "FILE" };
        var notebook = new Option<string?>("--notebook") { Description = "Notebook (default readings.csv of the garage).", HelpName = "FILE" };
        var seconds = new Option<string?>("--for") { Description = "Seconds after which it ends by itself.", HelpName = "S" };
        var common = new CommonOptions("Folder for the raw log (default pushsim-out/bench).");
        var command = new Command("bench", "Listens to a load cell: live trace, pulls marked as they end, readings noted.\n\nKeys: t tares anew, q ends (Ctrl-C too).\n\n" + Examples)
        {
            from, port, baud, known, tare, unit, calibration, rate, flip, tyre, floor, state, load, robot, notebook, seconds, common.Out, common.Force, common.Json, common.Quiet, common.Details,
        };
        CommonOptions.CheckFolder(common.Out);
        CommonOptions.CheckText(known, t => FitArguments.TryForce(t, out double f, out string m) && f > 0.0 ? "" : m.Length > 0 ? m : "must be above zero");
        CommonOptions.CheckText(load, t => FitArguments.TryForce(t, out double f, out string m) && f > 0.0 ? "" : m.Length > 0 ? m : "must be above zero");
        CommonOptions.CheckText(tare, t => FitArguments.TryForce(t, out _, out string m) ? "" : m);
        CommonOptions.CheckText(unit, t => FitArguments.IsForceUnit(t) ? "" : $"\"{t}\" is no unit of force; use N, gf, kgf, lbf, ozf or mV");
        CommonOptions.CheckText(calibration, t => FitArguments.TryCalibration(t, out _, out string m) ? "" : m);
        CommonOptions.CheckText(rate, FitArguments.RateComplaint);
        CommonOptions.CheckText(seconds, t => Number(t) is > 0.0 ? "" : "needs seconds");
        command.Validators.Add(found =>
        {
            string? lines = found.GetValue(from);
            if (lines is not null and not BenchRequest.Input)
            {
                found.AddError($"bench takes - for standard input, not \"{lines}\"; a port goes with --port, a whole log with pushsim fit");
            }
            else if (lines is null == found.GetValue(port) is null)
            {
                found.AddError(lines is null ? "bench needs --port NAME, or - for lines on standard input" : "bench takes --port or -, not both");
            }
        });
        command.SetAction(p =>
        {
            var log = new LogOptions
            {
                ForceUnit = p.GetValue(unit),
                Rate = p.GetValue(rate) is string r && FitArguments.TryRate(r, out double perSecond) ? perSecond : null,
                ForcePerMillivolt = p.GetValue(calibration) is string c && FitArguments.TryCalibration(c, out double per, out _) ? per : null,
                IsReversed = p.GetValue(flip),
                Advice = LogAdvice.OfFit,
            };
            var settings = new BenchSettings { Log = log, Tare = Force(p.GetValue(tare)), Known = Force(p.GetValue(known)) };
            var asked = new OutputRequest(p.GetValue(common.Out), p.GetValue(common.Force), p.GetValue(common.Json), p.GetValue(common.Quiet), NoPlots: true, Report: false, p.GetValue(common.Details), "pushsim bench") { Garage = GarageOption.Of(p) };
            return new BenchRun(
                new BenchRequest(p.GetValue(port) ?? BenchRequest.Input, (int)p.GetValue(baud), settings, Number(p.GetValue(seconds)), asked)
                {
                    Tyre = p.GetValue(tyre), Floor = p.GetValue(floor) ?? "", State = p.GetValue(state) ?? "", Load = Force(p.GetValue(load)), Robot = p.GetValue(robot), Notebook = p.GetValue(notebook),
                },
                output,
                error,
                person,
                cancel).Run();
        });
        return command;
    }

    private static double? Force(string? text) => text is not null && FitArguments.TryForce(text, out double newton, out _) ? newton : null;

    private static double? Number(string? text) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;
}
