using PushSim.Powertrain;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;
using PushSim.Tyres;

namespace PushSim.Scenarios.Robots;

/// <summary>Reads a robot's motors and drives: which motors turn which wheels, through which gears.</summary>
/// <param name="robot">The robot's file.</param>
/// <param name="wheels">The robot's wheels.</param>
/// <param name="wheelIndex">Number of each wheel by its name.</param>
internal sealed class DriveReader(Section robot, IReadOnlyList<WheelSettings> wheels, IReadOnlyDictionary<string, int> wheelIndex)
{
    private readonly Dictionary<string, MotorReader> _motors = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _index = new(StringComparer.Ordinal);
    private readonly List<ReadDrive> _drives = [];

    // Name of the drive that turns a wheel, by the wheel's number.
    private readonly Dictionary<int, string> _owner = [];

    /// <summary>The drives in the order of the file.</summary>
    public IReadOnlyList<ReadDrive> Drives => _drives;

    /// <summary>Number of each drive by its name.</summary>
    public IReadOnlyDictionary<string, int> Index => _index;

    /// <summary>Name of a motor as a part of its drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="index">Place among its motors, from 0.</param>
    public static string PartOfDrive(string drive, int index) => index == 0 ? drive : $"{drive}, motor {index + 1}";

    /// <summary>Reads them; call once.</summary>
    public void Read(IReadOnlyList<Section> motors, IReadOnlyList<Section> drives)
    {
        foreach (Section s in motors)
        {
            if (PartNames.New(s, "motor", _motors.ContainsKey) is string motor)
            {
                _motors.Add(motor, new MotorReader(s, motor));
            }
        }

        foreach (Section s in drives)
        {
            string? name = PartNames.NewWithColumns(s, "drive", _index.Keys);
            ReadDrive drive = Read(s, name ?? "");
            if (name is not null)
            {
                _index.Add(name, _drives.Count);
                _drives.Add(drive);
            }
        }
    }

    /// <summary>Warns of motors that no drive names, where nothing else is wrong.</summary>
    public void WarnOfUnusedMotors()
    {
        foreach ((string name, MotorReader motor) in _motors)
        {
            if (!motor.IsUsed && robot.Context.Errors == 0)
            {
                robot.Context.Warning(motor.Section.Place, $"motor \"{name}\" is in no drive", "name it in the motors of a [[drive]], or take it out");
            }
        }
    }

    private ReadDrive Read(Section s, string name)
    {
        IReadOnlyList<TomlText>? names = s.Texts("motors");
        List<MotorReader> motors = [];
        foreach (TomlText m in names ?? [])
        {
            if (PartNames.TryFind(_motors, m.Value, PartOfDrive(name, motors.Count), out MotorReader? motor))
            {
                motors.Add(motor);
            }
            else
            {
                PartNames.Unknown(robot, m.Place, "motor", m.Value, _motors.Keys);
            }
        }

        double? ratio = s.Number("gear_ratio");
        double? ownEfficiency = GearReader.Efficiency(s, $"drive \"{name}\"");
        double? given = ownEfficiency ?? motors.FirstOrDefault()?.GearEfficiency;
        double efficiency = given ?? motors.Select(m => m.EfficiencyFromTorque(ratio)).FirstOrDefault(e => e is not null) ?? 1.0;
        DriveSettings drive = s.Fill(new DriveSettings { Name = name, Wheels = WheelsOf(s, name), Motors = MotorsOf(s, name, motors, ratio, given), GearEfficiency = efficiency });
        return new ReadDrive(drive, s, names?.Count ?? 0);
    }

    private List<(MotorSettings Motor, double Ratio)> MotorsOf(Section s, string name, List<MotorReader> readers, double? ratio, double? efficiency)
    {
        List<(MotorSettings, double)> motors = [];
        foreach (MotorReader reader in readers)
        {
            double? total = ratio ?? reader.GearRatio ?? (reader.IsOfOutput ? 1.0 : null);
            if (total is null && reader.Section.IsMeant("gear_ratio"))
            {
                return motors;
            }

            if (total is null)
            {
                string asks = reader.DoubtfulSpeed is double slow ? FormattableString.Invariant($"is {slow / KeyTable.Rpm:F0} rpm the speed of the gearbox's shaft? Then write output_speed in place of no_load_speed, which needs no ratio; else ") : "";
                s.Missing(["gear_ratio"], $"drive \"{name}\" has no gear ratio, nor has its motor", asks + "add gear_ratio = 25 (1 for a direct drive)");
                return motors;
            }

            // a no-load current of a bare motor holds no gear loss; one through a gearbox holds the drive's unless the motor says, or else its stall torque
            double? ofData = reader.GearEfficiency ?? (reader.HasGears ? efficiency : null);
            bool isFirstUse = !reader.IsUsed;
            if (isFirstUse && ratio > 1.0 && reader.DoubtfulSpeed is double speed && robot.Context.Drawn is null)
            {
                robot.Context.Warning(
                    reader.Section.PlaceOf("no_load_speed"), FormattableString.Invariant($"motor \"{reader.Name}\": {speed / KeyTable.Rpm:F0} rpm is taken as the bare motor's, and the drive's {ratio:G4}:1 slows it down further"),
                    "is it the speed of the gearbox's shaft? Then write output_speed in place of no_load_speed; if not, gear_ratio = 1 in the motor says so");
            }

            if (reader.GearRatio is null && reader.IsOfOutput)
            {
                reader.WarnOfOtherMotor(s, "drive");
            }

            if (reader.Make(s, ratio, ofData) is MotorSettings motor)
            {
                motors.Add((motor, total.Value));
                if (motor.RotorInertia == 0.0 && isFirstUse && !reader.Section.IsMeant("rotor_inertia"))
                {
                    robot.Context.Warning(reader.Section.Place, $"motor \"{motor.Name}\" has no rotor inertia", "a geared rotor often outweighs the wheel: add rotor_inertia, 1 g cm2 for a 20 mm can, 3 for 25 mm, 20 for 37 mm");
                }
            }
        }

        return motors;
    }

    private List<(int Wheel, double Ratio)> WheelsOf(Section s, string name)
    {
        IReadOnlyList<double>? ratios = s.Numbers("wheel_ratios");
        IReadOnlyList<TomlText>? names = s.Texts("wheels");
        if (names is { Count: 0 })
        {
            robot.Context.Error(s.PlaceOf("wheels"), $"drive \"{name}\" turns no wheel", "name its wheels, or take the drive out");
        }

        if (ratios is not null && names is not null && ratios.Count != names.Count)
        {
            robot.Context.Error(s.PlaceOf("wheel_ratios"), $"{ratios.Count} ratios for {names.Count} wheels", "give one ratio per wheel");
            ratios = null;
        }

        List<(int, double)> turned = [];
        for (int i = 0; i < (names?.Count ?? 0); i++)
        {
            if (WheelOf(names![i], name) is int wheel)
            {
                turned.Add((wheel, ratios?[i] ?? 1.0));
            }
        }

        return turned;
    }

    private int? WheelOf(TomlText text, string drive)
    {
        if (!wheelIndex.TryGetValue(text.Value, out int wheel))
        {
            PartNames.Unknown(robot, text.Place, "wheel", text.Value, wheelIndex.Keys);
            return null;
        }

        if (_owner.TryGetValue(wheel, out string? other))
        {
            robot.Context.Error(text.Place, $"wheel \"{text.Value}\" is already in drive \"{other}\"", "a wheel turns with one drive only");
            return null;
        }

        _owner.Add(wheel, drive);
        if (wheels[wheel].IsSkid)
        {
            robot.Context.Error(text.Place, $"\"{text.Value}\" is a skid and cannot be driven", "take it out of the drive, or drop skid = true");
        }

        return wheel;
    }

    /// <summary>A drive as read.</summary>
    /// <param name="Settings">The drive.</param>
    /// <param name="Section">Its table.</param>
    /// <param name="Motors">Motors that it names [1]; a name that is unknown still counts, so that a controller can point at it.</param>
    public sealed record ReadDrive(DriveSettings Settings, Section Section, int Motors);
}
