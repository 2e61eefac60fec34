using PushSim.Cli.Matches;

namespace PushSim.Cli.Fit;

/// <summary>Options of `fit` about what the tyres make of the robot.</summary>
internal sealed class MeaningOptions
{
    private const double MostTimes = 10.0;

    private readonly ContestOptions _contest = new("Opponent's robot file: which share of shoves each tyre wins.", hasSecond: false);
    private readonly Option<string?> _stronger = new("--stronger-motor") { Description = "Once more with this many times the stall torque, e.g. 1.5.", HelpName = "TIMES" };
    private readonly Option<long> _shoves = CommonOptions.Whole("--shoves", "N", "Shoves of each tyre.", 200, 10, 1_000_000);
    private readonly CommonOptions _common = new();

    public void AddTo(Command command, Option<string?> robot)
    {
        _contest.AddTo(command);
        foreach (Option option in new Option[] { _stronger, _shoves, _common.Seed, _common.Threads })
        {
            command.Options.Add(option);
        }

        CommonOptions.CheckText(_stronger, text => TryTimes(text, out _) ? "" : $"takes how many times the stall torque, above 1 and up to 10, for example 1.5, not \"{text}\"");
        command.Validators.Add(found =>
        {
            bool hasRobot = found.GetValue(robot) is not null;
            if (!hasRobot && _contest.Opponent(found) is not null)
            {
                found.AddError("--against needs the robot that shoves: add --robot FILE");
            }
            else if (!hasRobot && found.GetValue(_stronger) is not null)
            {
                found.AddError("--stronger-motor needs the robot with the motors: add --robot FILE");
            }
        });
    }

    public MeaningRequest Of(ParseResult p)
    {
        (string? opponent, string? scene) = _contest.Of(p);
        double? stronger = p.GetValue(_stronger) is string t && TryTimes(t, out double times) ? times : null;
        return new MeaningRequest(opponent, scene, _contest.Label(p), stronger, p.GetValue(_shoves), (ulong)p.GetValue(_common.Seed), (int)p.GetValue(_common.Threads));
    }

    /// <summary>Says what stands in the way; null if nothing does.</summary>
    public static int? Complain(MeaningResult? result, TextWriter error)
    {
        if (result is null)
        {
            return null;
        }

        return ProblemWriter.Tell(error, result.Problems, result.CannotRead)
            ?? (result.Lack is MeaningLack lack ? Complaint.OfCommandLine(error, Missing(lack, result.Robot), "fit") : null);
    }

    private static string Missing(MeaningLack lack, string robot) => lack == MeaningLack.Drive
        ? $"{robot} has no battery or no controllers, so nothing drives it; --against and --stronger-motor need a robot that drives"
        : "--against needs a robot file after --robot, not a scenario; give the height of the tether with --height";

    private static bool TryTimes(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && value is > 1.0 and <= MostTimes;
}
