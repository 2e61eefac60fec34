using PushSim.Powertrain;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Robots;

/// <summary>Reads a robot's controllers: which motors each feeds, and how.</summary>
/// <param name="robot">The robot's file.</param>
/// <param name="drives">The robot's drives, as read.</param>
internal sealed class ControllerReader(Section robot, DriveReader drives)
{
    /// <summary>All controllers; complains about every motor that none feeds.</summary>
    public List<ControllerSettings> Read(IReadOnlyList<Section> sections)
    {
        List<ControllerSettings> controllers = [];
        Dictionary<(int, int), string> owner = [];
        HashSet<string> names = new(StringComparer.Ordinal);
        foreach (Section s in sections)
        {
            string? name = PartNames.NewWithColumns(s, "controller", names);
            if (name is not null)
            {
                names.Add(name);
            }

            controllers.Add(ReadController(s, name ?? "", owner));
        }

        bool isUnsure = robot.IsUnsure("controller") || sections.Any(s => s.IsMeant("drives"));
        for (int d = 0; d < drives.Drives.Count && !isUnsure; d++)
        {
            DriveReader.ReadDrive drive = drives.Drives[d];
            foreach (int m in Enumerable.Range(0, drive.Motors).Where(m => !owner.ContainsKey((d, m))))
            {
                robot.Context.Error(drive.Section.PlaceOf("motors"), $"motor {m + 1} of drive \"{drive.Settings.Name}\" has no controller", $"add \"{drive.Settings.Name}\" to the drives of a [[controller]]");
            }
        }

        if (controllers.Count > 1 && !isUnsure && sections.All(s => s.Has("side")) && controllers.Select(c => c.Side).Distinct().Count() == 1)
        {
            string side = controllers[0].Side == CommandSide.Left ? "left" : "right";
            robot.Context.Error(sections[^1].PlaceOf("side"), $"{(controllers.Count == 2 ? "both" : $"all {controllers.Count}")} controllers follow the {side} side, so nothing steers this robot", $"give one of them side = \"{(side == "left" ? "right" : "left")}\"");
        }

        return controllers;
    }

    private ControllerSettings ReadController(Section s, string name, Dictionary<(int, int), string> owner)
    {
        List<(int Drive, int Motor)> motors = [];
        foreach (TomlText text in s.Texts("drives") ?? [])
        {
            foreach ((int Drive, int Motor) motor in MotorsNamed(text))
            {
                if (!owner.TryAdd(motor, name))
                {
                    robot.Context.Error(text.Place, $"motor {motor.Motor + 1} of drive \"{drives.Drives[motor.Drive].Settings.Name}\" is already on controller \"{owner[motor]}\"", "a motor hangs on one controller only");
                }

                motors.Add(motor);
            }
        }

        _ = s.Text("shelf");
        int zero = s.Choice("zero_command");
        int between = s.Choice("between_pulses");
        int side = s.Choice("side");
        ControllerSettings d = s.Fill(new ControllerSettings
        {
            Name = name,
            Motors = motors,
            Side = side == 1 ? CommandSide.Right : CommandSide.Left,
            Wiring = WiringOf(s, name, motors.Count),
            BetweenPulses = !s.Has("between_pulses") ? null : between switch { 1 => BetweenPulses.Diode, 2 => BetweenPulses.Coast, _ => BetweenPulses.Brake },
            ZeroCommand = zero switch { 0 => ZeroCommand.Coast, 2 => ZeroCommand.Locked, _ => ZeroCommand.Brake },
        });
        CheckController(s, d);
        return d;
    }

    private void CheckController(Section s, ControllerSettings d)
    {
        if (d.ShutDownTemperature <= d.FoldBackTemperature)
        {
            robot.Context.Error(s.PlaceOf("shut_down"), "\"shut_down\" is not above \"fold_back\"", "the limit falls from fold_back to zero at shut_down");
        }

        if (d.LimitsEachPulse && !d.HasPulses)
        {
            robot.Context.Error(s.PlaceOf("limits_each_pulse"), $"controller \"{d.Name}\" ends its pulses at a current, but its pulses are not known", "add pulse_frequency = \"20 kHz\", or between_pulses = \"coast\"");
        }

        if (d.ThermalResistance > 0.0 && d.HeatCapacity == 0.0)
        {
            robot.Context.Error(s.PlaceOf("thermal_resistance"), $"controller \"{d.Name}\" has a thermal resistance but no heat capacity", "add heat_capacity = \"4 J/K\"");
        }

        if (d.ZeroCommand == ZeroCommand.Locked && d.Motors.All(m => drives.Drives[m.Drive].Settings.HoldTorque == 0.0))
        {
            robot.Context.Warning(s.PlaceOf("zero_command"), $"controller \"{d.Name}\" locks at zero command, but its drives have no hold torque", "add hold_torque to the drive, or use \"brake\"");
        }
    }

    private Wiring WiringOf(Section s, string name, int motors)
    {
        int wiring = s.Choice("wiring");
        if (motors > 1 && (wiring == 0 || !s.Has("wiring")))
        {
            robot.Context.Error(s.PlaceOf("wiring"), $"controller \"{name}\" has {motors} motors, so their wiring must be said", "add wiring = \"parallel\" or wiring = \"series\"");
        }

        return wiring switch { 1 => Wiring.Parallel, 2 => Wiring.Series, _ => Wiring.Single };
    }

    // "left" is every motor of that drive, "left/2" its second.
    private List<(int Drive, int Motor)> MotorsNamed(TomlText text)
    {
        if (drives.Index.TryGetValue(text.Value, out int drive))
        {
            if (drives.Drives[drive] is { Motors: 0 } bare && !bare.Section.IsMeant("motors"))
            {
                robot.Context.Error(text.Place, $"drive \"{text.Value}\" has no motor", "add motors = [\"...\"] to the drive");
            }

            return [.. Enumerable.Range(0, drives.Drives[drive].Motors).Select(m => (drive, m))];
        }

        int slash = text.Value.LastIndexOf('/');
        bool isNumbered = slash > 0 && drives.Index.TryGetValue(text.Value[..slash], out drive);
        if (isNumbered && int.TryParse(text.Value.AsSpan(slash + 1), NumberStyles.None, CultureInfo.InvariantCulture, out int number))
        {
            DriveReader.ReadDrive named = drives.Drives[drive];
            if (number >= 1 && number <= named.Motors)
            {
                return [(drive, number - 1)];
            }

            if (!named.Section.IsMeant("motors"))
            {
                robot.Context.Error(text.Place, $"drive \"{named.Settings.Name}\" has {named.Motors} {(named.Motors == 1 ? "motor" : "motors")}, no motor {number}", "motors count from 1");
            }

            return [];
        }

        PartNames.Unknown(robot, text.Place, "drive", text.Value, drives.Index.Keys);
        return [];
    }
}
