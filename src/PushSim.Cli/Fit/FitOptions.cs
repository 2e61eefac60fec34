using PushSim.Scenarios.Logs;

namespace PushSim.Cli.Fit;

/// <summary>The logs of `fit` and how they are to be taken.</summary>
internal sealed class FitOptions
{
    private readonly Argument<string[]> _files = new("CSV") { Description = "The notebook readings.csv (none: that of the garage), logs of a load cell (columns time, force; also tyre, material, pull, speed, rpm, current), or tables of readings (force or sliding, peak or breakaway; also tyre, material, pull, load). Unit in the name: \"peak [gf]\", \"slide_gf\".", Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string?> _load = new("--load") { Description = "Load on the tested tyres, e.g. \"1360 gf\" or \"1360 gf +- 20 gf\".", HelpName = "FORCE" };
    private readonly Option<string?> _height = new("--height") { Description = "Height of the tether above the floor.", HelpName = "LENGTH" };
    private readonly Option<bool> _drag = new("--drag") { Description = "The robot was dragged with its wheels locked." };
    private readonly Option<string?> _tyre = new("--tyre") { Description = "All files are of this tyre.", HelpName = "NAME" };
    private readonly Option<string?> _material = new("--material") { Description = "What the tyres are made of: a material of the shelf (pushsim shelf tyres).", HelpName = "NAME" };
    private readonly Option<string?> _unit = new("--unit") { Description = "Unit of force: N, gf, kgf, lbf, ozf, mV.", HelpName = "UNIT" };
    private readonly Option<string?> _timeUnit = new("--time-unit") { Description = "Unit of time: s, ms, us, min.", HelpName = "UNIT" };
    private readonly Option<string?> _rate = new("--rate") { Description = "Readings a second, of a log without times.", HelpName = "NUMBER" };
    private readonly Option<string?> _calibration = new("--calibration") { Description = "Of a cell in mV, e.g. \"25 gf/mV\" or \"25 gf +- 1 gf/mV\".", HelpName = "FORCE/mV" };
    private readonly Option<string?> _tare = new("--tare") { Description = "Reading of the slack chain, if not in the log.", HelpName = "FORCE" };
    private readonly Option<bool> _flip = new("--flip") { Description = "The cell's sign is reversed." };
    private readonly Option<string?> _difference = new("--difference") { Description = "Friction difference that matters, e.g. 0.05.", HelpName = "NUMBER" };
    private readonly Option<bool> _simulate = new("--simulate") { Description = "Fit the scenario of --robot, run in the engine, to the logs: slip speed and stiffness too." };

    private readonly SetOption _set = new();

    public Option<string?> Robot { get; } = new("--robot") { Description = "Robot file, or scenario with a tether: load, motors.", HelpName = "FILE" };

    public void AddTo(Command command)
    {
        command.Arguments.Add(_files);
        foreach (Option option in new Option[] { _load, Robot, _height, _drag, _tyre, _material, _unit, _timeUnit, _rate, _calibration, _tare, _flip, _difference, _simulate })
        {
            command.Options.Add(option);
        }

        _set.AddTo(command);
        CommonOptions.CheckText(_load, LoadComplaint);
        CommonOptions.CheckText(_tare, t => FitArguments.TryForce(t, out _, out string m) ? "" : m);
        CommonOptions.CheckText(_height, t => FitArguments.TryLength(t, out double h, out string m) && h >= 0.0 ? "" : m.Length > 0 ? m : "cannot be below the floor");
        CommonOptions.CheckText(_calibration, t => FitArguments.TryCalibration(t, out _, out string m) ? "" : m);
        CommonOptions.CheckText(_unit, t => FitArguments.IsForceUnit(t) ? "" : $"\"{t}\" is no unit of force; use N, gf, kgf, lbf, ozf or mV");
        CommonOptions.CheckText(_timeUnit, t => FitArguments.IsTimeUnit(t) ? "" : $"\"{t}\" is no unit of time; use s, ms, us or min");
        CommonOptions.CheckText(_rate, FitArguments.RateComplaint);
        CommonOptions.CheckText(_difference, t => TryDifference(t, out _) ? "" : "takes a friction above zero and below 10, for example 0.05");
    }

    public FitRequest Of(ParseResult p) => new()
    {
        Files = p.GetValue(_files)!,
        Load = p.GetValue(_load) is string l && FitArguments.TryForce(l, out double newton, out _) ? newton : null,
        CommonOff = double.Hypot(
            p.GetValue(_load) is string own && FitArguments.TryForce(own, out _, out double load, out _) ? load : 0.0,
            p.GetValue(_calibration) is string cell && FitArguments.TryCalibration(cell, out _, out double calibration, out _) ? calibration : 0.0),
        RobotFile = p.GetValue(Robot),
        Height = p.GetValue(_height) is string h && FitArguments.TryLength(h, out double metre, out _) ? metre : null,
        IsDrag = p.GetValue(_drag),
        Tyre = p.GetValue(_tyre),
        Material = p.GetValue(_material),
        Set = _set.Of(p),
        Garage = GarageOption.Of(p),
        Tare = p.GetValue(_tare) is string t && FitArguments.TryForce(t, out double slack, out _) ? slack : null,
        Difference = p.GetValue(_difference) is string d && TryDifference(d, out double matters) ? matters : null,
        Simulate = p.GetValue(_simulate),
        Log = new LogOptions
        {
            ForceUnit = p.GetValue(_unit),
            TimeUnit = p.GetValue(_timeUnit),
            Rate = p.GetValue(_rate) is string r && FitArguments.TryRate(r, out double rate) ? rate : null,
            ForcePerMillivolt = p.GetValue(_calibration) is string c && FitArguments.TryCalibration(c, out double per, out _) ? per : null,
            IsReversed = p.GetValue(_flip),
        },
    };

    /// <summary>What is wrong with a load on the tested tyres; empty if nothing is.</summary>
    public static string LoadComplaint(string text) => FitArguments.TryForce(text, out double f, out string m) && f > 0.0 ? "" : m.Length > 0 ? m : "must be above zero";

    private static bool TryDifference(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && value is > 0.0 and < 10.0;
}
