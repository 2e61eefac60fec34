using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;
using PushSim.Tyres;

namespace PushSim.Scenarios.Robots;

/// <summary>A robot file's tree to settings, with the checks between its parts.</summary>
internal sealed class RobotReader
{
    private const int FewestWheels = 2;
    private const int MostWheels = 8;

    // Wheels whose radii differ by less are of one size [m].
    private const double SameRadius = 1e-6;

    private readonly ReadContext _context;
    private readonly Section _root;
    private readonly List<WheelSettings> _wheels = [];
    private readonly List<Section> _wheelSections = [];
    private readonly Dictionary<string, TyreReader> _tyres = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _wheelIndex = new(StringComparer.Ordinal);

    // Wheels whose spin inertia is estimated [kg m^2].
    private readonly List<(string Wheel, double Inertia)> _discs = [];

    private RobotReader(ReadContext context, TomlTable tree)
    {
        _context = context;
        if (context.Drawn is null)
        {
            ShelfFill.FillRobot(context, tree);
        }

        _root = new Section(context, "robot", tree);
    }

    /// <summary>The robot; null if the context has any error.</summary>
    public static RobotSettings? Read(ReadContext context, TomlTable tree) => new RobotReader(context, tree).Read();

    private RobotSettings? Read()
    {
        string name = _root.Text("name") ?? "robot";
        foreach (Section s in _root.Tables("tyre"))
        {
            if (PartNames.New(s, "tyre", _tyres.ContainsKey) is string tyre)
            {
                _tyres.Add(tyre, new TyreReader(s, tyre));
            }
        }

        ReadWheels();
        Section? chassisSection = _root.Table("chassis");
        ChassisSettings? chassis = chassisSection is null ? null : ChassisReader.Read(chassisSection, _wheels);
        FinishTyres(chassis);
        var drives = new DriveReader(_root, _wheels, _wheelIndex);
        drives.Read(_root.Tables("motor"), _root.Tables("drive"));
        List<ControllerSettings> controllers = new ControllerReader(_root, drives).Read(_root.Tables("controller"));
        BatterySettings? battery = _root.Table("battery") is Section b ? BatteryReader.Read(b) : null;
        CheckBattery(controllers, battery);
        if (chassis is not null)
        {
            CheckSupport(chassisSection!, chassis);
            CheckInBody(chassis);
        }

        CheckMiddleWheels();

        OutlineSettings? outline = chassis is not null && _root.Table("outline") is Section o ? OutlineReader.Read(o, chassis) : null;
        if (drives.Drives.Count > 0 || !_root.Has("drive"))
        {
            drives.WarnOfUnusedMotors();
        }

        return _context.Errors > 0 || chassis is null
            ? null
            : StandingHeights.OfBody(new RobotSettings { Name = name, Chassis = chassis, Wheels = _wheels, Drives = [.. drives.Drives.Select(d => d.Settings)], Controllers = controllers, Battery = battery, Outline = outline });
    }

    private void ReadWheels()
    {
        foreach (Section s in _root.Tables("wheel"))
        {
            string? name = PartNames.NewWithColumns(s, "wheel", _wheelIndex.Keys);
            WheelSettings wheel = ReadWheel(s, name ?? "");
            if (name is not null)
            {
                _wheelIndex.Add(name, _wheels.Count);
                _wheels.Add(wheel);
                _wheelSections.Add(s);
            }
        }

        foreach (IGrouping<double, string> alike in _discs.GroupBy(d => d.Inertia, d => d.Wheel))
        {
            string names = string.Join(", ", alike);
            _context.Note(FormattableString.Invariant($"{(alike.Count() > 1 ? "wheels" : "wheel")} {names}: spin inertia {1e7 * alike.Key:G4} g cm2 estimated as that of a disc of its mass"), "rim-heavy wheels have up to twice as much");
        }

        if (!_root.IsUnsure("wheel") && _wheels.Count is > 0 and (< FewestWheels or > MostWheels))
        {
            _context.Error(_wheelSections[^1].Place, $"{_wheels.Count} {(_wheels.Count == 1 ? "wheel" : "wheels")}, but a robot has {FewestWheels} to {MostWheels}", "count skids and balls as wheels with skid = true");
        }
    }

    private WheelSettings ReadWheel(Section s, string name)
    {
        double radius = 0.5 * s.Required("diameter");
        bool isSkid = s.Flag("skid", false);
        double? mass = s.Number("mass");
        double? inertia = s.Number("inertia");
        if (inertia is null && mass is double m)
        {
            inertia = 0.5 * m * radius * radius;
            if (double.IsFinite(inertia.Value) && _context.Drawn is null)
            {
                _discs.Add((name, inertia.Value));
            }
        }
        else if (inertia is null && !isSkid)
        {
            s.Missing(["mass", "inertia", "skid"], $"wheel \"{name}\" has no inertia", "add mass = \"28 g\" (inertia is estimated) or inertia = \"90 g cm2\"");
        }

        return s.Fill(Blank.Wheel with { Name = name, Radius = radius, SpinInertia = inertia ?? 1e-6, IsSkid = isSkid }) with { Tyre = SkidOf(s, isSkid) ?? TyreOf(s, name) };
    }

    // A caster, ball, skid or tail of its own friction: hard, so that only the friction matters
    private TyreSettings? SkidOf(Section s, bool isSkid)
    {
        if (s.Number("friction") is not double friction)
        {
            return null;
        }

        if (!isSkid)
        {
            _context.Error(s.PlaceOf("friction"), "friction of a wheel that turns comes from its tyre", "leave it out, or set skid = true");
        }

        return Blank.Tyre with
        {
            Name = "skid", StaticFriction = friction, KineticFriction = friction, BreakawayDeflection = 1e-4, BodyStiffness = 1e5, BodyDamping = 6.0, TreadMass = 3e-3,
            VerticalStiffness = 8e4, VerticalDamping = 8.0, RollingRenewal = 0.0, RollingResistance = 0.0,
        };
    }

    private TyreSettings TyreOf(Section s, string wheel)
    {
        if (s.Text("tyre") is string name)
        {
            if (PartNames.TryFind(_tyres, name, wheel, out TyreReader? tyre))
            {
                return tyre.Given;
            }

            PartNames.Unknown(_root, s.PlaceOf("tyre"), "tyre", name, _tyres.Keys);
        }

        return Blank.Tyre;
    }

    // What a tyre file leaves to be estimated needs the wheels and the weight on them.
    private void FinishTyres(ChassisSettings? chassis)
    {
        foreach (TyreReader reader in _tyres.Values)
        {
            List<WheelSettings> users = [.. _wheels.Where(w => ReferenceEquals(w.Tyre, reader.Given))];

            // a tyre that sits on no wheel waits for its day
            if (users.Count == 0)
            {
                continue;
            }

            TyreSettings tyre = reader.Finish(users, chassis, _wheels.Count);
            for (int i = 0; i < _wheels.Count; i++)
            {
                if (ReferenceEquals(_wheels[i].Tyre, reader.Given))
                {
                    _wheels[i] = _wheels[i] with { Tyre = tyre };
                }
            }
        }
    }

    private void CheckBattery(List<ControllerSettings> controllers, BatterySettings? battery)
    {
        if (controllers.Count > 0 && battery is null && !_root.Has("battery") && !_root.IsUnsure("battery"))
        {
            _context.Error(_root.PlaceOf("controller"), "there are controllers but no battery", "add [battery] with cells, capacity and resistance");
        }
    }

    private void CheckSupport(Section section, ChassisSettings c)
    {
        bool isKnown = double.IsFinite(c.CentreOfMassX) && double.IsFinite(c.CentreOfMassY) && _wheels.All(w => double.IsFinite(w.X) && double.IsFinite(w.Y));
        if (!isKnown || _wheels.Count < FewestWheels || _root.IsUnsure("wheel"))
        {
            return;
        }

        double margin = SupportPolygon.Margin([.. _wheels.Select(w => (w.X, w.Y))], c.CentreOfMassX, c.CentreOfMassY);
        if (double.IsNaN(margin))
        {
            _context.Error(_wheelSections[^1].Place, "the wheels stand in one line, so the robot falls over", "add a skid or ball: a [[wheel]] with skid = true");
        }
        else if (margin <= 0.0)
        {
            _context.Error(section.PlaceOf("centre_of_mass"), FormattableString.Invariant($"the centre of mass lies {Math.Abs(1e3 * margin):F1} mm outside the wheels, so the robot tips"), "move it, the wheels, or add a skid");
        }
    }

    // Axles may stand a radius out of the body's ends and a diameter out of its sides; further is a slip of the pen.
    private void CheckInBody(ChassisSettings c)
    {
        foreach ((WheelSettings wheel, Section s) in _wheels.Zip(_wheelSections))
        {
            double ahead = Math.Abs(wheel.X) - (0.5 * c.Length) - wheel.Radius;
            double aside = Math.Abs(wheel.Y) - (0.5 * c.Width) - (2.0 * wheel.Radius);
            double outside = Math.Max(ahead, aside);
            if (outside > 0.0)
            {
                string key = ahead > aside ? "x" : "y";
                _context.Error(s.PlaceOf(key), FormattableString.Invariant($"wheel \"{wheel.Name}\" stands {1e3 * outside:F0} mm too far outside the body"), "x and y are counted from the middle of the body; check the body's length and width too");
            }
        }
    }

    // A middle wheel of its own size is meant to lift its neighbours off the floor, or to hang above it
    private void CheckMiddleWheels()
    {
        WheelSettings[] odd = [.. _wheels.Where(IsOdd)];
        if (odd.Length == 0 || _context.Drawn is not null)
        {
            return;
        }

        string names = string.Join(", ", odd.Select(w => $"\"{w.Name}\""));
        _context.Warning(
            _wheelSections[_wheels.IndexOf(odd[0])].PlaceOf("diameter"),
            $"{(odd.Length == 1 ? "wheel" : "wheels")} {names}: another diameter than the wheels before and behind, but the model does not raise those, nor {(odd.Length == 1 ? "this one" : "these")}",
            "every axle sits at its own wheel's radius, so that all wheels touch and carry; a dropped or raised middle wheel is not in the model");
    }

    // Larger than both nearest neighbours on its side, or smaller than both
    private bool IsOdd(WheelSettings wheel)
    {
        WheelSettings[] side = [.. _wheels.Where(w => !w.IsSkid && w.Y * wheel.Y > 0.0)];
        WheelSettings? ahead = side.Where(w => w.X > wheel.X).MinBy(w => w.X);
        WheelSettings? behind = side.Where(w => w.X < wheel.X).MaxBy(w => w.X);
        return !wheel.IsSkid && ahead is not null && behind is not null
            && (wheel.Radius > Math.Max(ahead.Radius, behind.Radius) + SameRadius || wheel.Radius < Math.Min(ahead.Radius, behind.Radius) - SameRadius);
    }
}
