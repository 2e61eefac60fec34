using PushSim.Powertrain;
using PushSim.Scenarios.Estimates;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Robots;

/// <summary>A motor of a file: its data, kept until the drive that uses it supplies a missing gear efficiency, or its stall torque does.</summary>
internal sealed class MotorReader
{
    // What a motor can be determined from: all that is not known unless it is given.
    private static readonly string[] DataKeys = [.. KeyTable.Rows<MotorData>("motor").Where(r => r.Row is KeyRow<MotorData> row && row.Get(Blank.MotorData) is null).Select(r => r.Key.Name)];

    // What may be that of the output shaft.
    private static readonly string[] SpeedKeys = ["output_speed", "no_load_speed", "output_stall_torque", "stall_torque"];

    // Motors of robots of this kind turn faster without load (common practice, no source) [rad/s].
    private const double LeastBareSpeed = 2000.0 * KeyTable.Rpm;

    // By this an exact value is moved, to see what it is part of [1].
    private const double Least = 1e-9;

    // All that belongs to the bare motor, so that it takes a gear ratio to be joined with what is known of the gearbox's shaft.
    private static readonly string[] BareKeys = ["speed_constant", "torque_constant", "no_load_speed", "stall_torque", "full_torque_speed"];

    private readonly MotorData _data;

    // What no conversion touches: inertia, heat, sensorless limits.
    private readonly MotorSettings _rest;

    // What it became at each gear efficiency and ratio [1] that a drive asked for.
    private readonly List<(double? Efficiency, double? Ratio, MotorSettings? Motor)> _made = [];

    public MotorReader(Section section, string name)
    {
        Section = section;
        _ = section.Text("shelf");
        GearRatio = section.Number("gear_ratio");
        _ = section.Number("own_share");
        GearEfficiency = GearReader.Efficiency(section, $"motor \"{name}\"");
        _data = section.Fill(Blank.MotorData with { Name = name, GearRatio = GearRatio ?? 1.0 }, ("speed_constant", d => section.Put(d, "torque_constant")));
        _rest = section.Fill(Blank.Motor with { Name = name });
        CheckRest(section, _rest);
        WarnOfOtherMotor(section, "motor");
    }

    /// <summary>Motor turns per turn of the shaft at which its data hold [1]; null if the file gives none.</summary>
    public double? GearRatio { get; }

    /// <summary>Efficiency of that gearbox as the file gives it, by itself or by stages, 0..1 [1]; null if the file says nothing of it, NaN if what it says is wrong.</summary>
    public double? GearEfficiency { get; }

    /// <summary>Whether its data are said to be those of the gearbox's shaft, whatever its ratio.</summary>
    public bool IsOfOutput => (_data.OutputSpeed ?? _data.OutputStallTorque) is not null;

    /// <summary>Whether a gearbox stands between the rotor and the shaft of its data.</summary>
    public bool HasGears => IsOfOutput || GearRatio is not (null or 1.0);

    /// <summary>A speed without load so low that it may be that of a gearbox's shaft, though nothing says so [rad/s]; null if there is none.</summary>
    public double? DoubtfulSpeed => GearRatio is null && !IsOfOutput && _data.NoLoadSpeed < LeastBareSpeed ? _data.NoLoadSpeed : null;

    /// <summary>Efficiency that the stall torque shows [1]; null if it shows none, or is not asked because one is given.</summary>
    /// <param name="driveRatio">The drive's own gear ratio [1]; null for none.</param>
    public double? EfficiencyFromTorque(double? driveRatio) => GearEfficiency is null && !IsBroken() ? MotorFromData.Convert(At(_data, driveRatio, null)).GearEfficiency : null;

    /// <summary>True once a drive has asked for it.</summary>
    public bool IsUsed => _made.Count > 0;

    /// <summary>Its name.</summary>
    public string Name => _data.Name;

    /// <summary>Its table.</summary>
    public Section Section { get; }

    /// <summary>The motor as its drive's gears make it; null if the data are wrong or do not determine it.</summary>
    /// <param name="drive">The drive's table.</param>
    /// <param name="driveRatio">The drive's own gear ratio [1]; null for none.</param>
    /// <param name="efficiency">Efficiency of the gears that the data hold behind, 0..1 [1]; null if nobody gave one.</param>
    public MotorSettings? Make(Section drive, double? driveRatio, double? efficiency)
    {
        double? ratio = GearRatio ?? (IsOfOutput ? driveRatio : null);
        int known = _made.FindIndex(m => m.Efficiency.Equals(efficiency) && m.Ratio.Equals(ratio));
        if (known < 0)
        {
            known = _made.Count;
            _made.Add((efficiency, ratio, IsBroken() || efficiency is double.NaN || ratio is double.NaN ? null : Convert(drive, ratio, efficiency)));
        }

        return _made[known].Motor;
    }

    /// <summary>Warns where the ratio behind which its data hold is set anew: with another ratio they give another motor, whose gearbox turns as before.</summary>
    /// <param name="s">The table that gives the ratio.</param>
    /// <param name="kind">What it is: "motor" or "drive".</param>
    public void WarnOfOtherMotor(Section s, string kind)
    {
        bool isOfOutput = _data.TorqueConstant is null && _data.SpeedConstant is null && (IsOfOutput || (_data.NoLoadSpeed ?? _data.StallTorque) is not null);
        if (s.Context.Drawn is null && isOfOutput && s.PlaceSetAnew("gear_ratio") is Place place)
        {
            string key = SpeedKeys.First(Section.Has);
            string help = kind == "motor" ? "set gear_ratio of the drives anew (\"drive.*.gear_ratio\"), or give the motor a speed_constant or torque_constant" : "give the motor a gear_ratio of its own, then the drive's is free";
            s.Context.Warning(place, $"motor \"{_data.Name}\": its {key} is that of the output shaft, so another gear_ratio of the {kind} makes another motor, not another gear", help);
        }
    }

    // The data behind a ratio that is the drive's where the motor gives none: what belongs to the bare motor is then told at the gearbox's shaft.
    private MotorData At(MotorData data, double? driveRatio, double? efficiency)
    {
        double drive = GearRatio is null && IsOfOutput ? driveRatio ?? 1.0 : 1.0;
        return data with { GearRatio = data.GearRatio * drive, GearEfficiency = efficiency, NoLoadSpeed = data.NoLoadSpeed / drive, StallTorque = data.StallTorque * drive };
    }

    // What each written value may be off; a voltage, which is set, and the ratio 1, which is no gears, only if that is stated.
    private List<MotorDoubt> Doubts(Section drive, double? ratio, double? efficiency)
    {
        List<MotorDoubt> doubts = [];
        if (Section.Context.Drawn is not null)
        {
            return doubts;
        }

        foreach ((KeyDefinition key, KeyRow<MotorData>? row) in KeyTable.Rows<MotorData>("motor"))
        {
            if (row?.Get(_data) is double value && Section.Doubt(key.Name) is var (half, isStated) && (isStated || (key.Dimension != Dimension.Voltage && !(key.Name == "gear_ratio" && value == 1.0))))
            {
                doubts.Add(new MotorDoubt(At(row.Put(_data, value + Math.Max(half, Least * Math.Abs(value))), ratio, efficiency), isStated));
            }
        }

        if (GearRatio is null && IsOfOutput && ratio is double g && drive.Doubt("gear_ratio") is var (ofRatio, isRatioStated))
        {
            doubts.Add(new MotorDoubt(At(_data, g + ofRatio, efficiency), isRatioStated));
        }

        if ((GearReader.Doubt(Section) ?? GearReader.Doubt(drive)) is var (ofEfficiency, isEfficiencyStated))
        {
            doubts.Add(new MotorDoubt(At(_data, ratio, efficiency + ofEfficiency), isEfficiencyStated));
        }

        return doubts;
    }

    private MotorSettings? Convert(Section drive, double? ratio, double? efficiency)
    {
        MotorConversion c = MotorFromData.Convert(At(_data, ratio, efficiency) with { Doubts = Doubts(drive, ratio, efficiency) });
        bool isShaftOnly = IsOfOutput && ratio is null;
        if (isShaftOnly && BareKeys.FirstOrDefault(Section.Has) is string bare)
        {
            Section.Missing(["gear_ratio"], $"motor \"{_data.Name}\": \"{bare}\" is the bare motor's, its other data are those of the gearbox's shaft, and no gear_ratio joins them", $"add gear_ratio to the motor{LikelyRatio()}, or leave {bare} out");
            return null;
        }

        if (c.Settings is null)
        {
            Section.Missing(DataKeys, $"motor \"{_data.Name}\" is not determined", $"missing: {c.Missing}");
            return null;
        }

        if (IsOfOutput && GearRatio is null && ratio is double g)
        {
            Section.Context.Note(FormattableString.Invariant($"motor \"{_data.Name}\": its shaft data hold behind the {g:G4}:1 of its drive"), "none, if that is the gearbox's ratio and no other gear is in it");
        }

        foreach (string note in c.Notes)
        {
            Section.Context.Note($"motor \"{_data.Name}\": {note}", "that of the data it comes from; sheets of cheap motors are 10 to 20 % off (estimate)");
        }

        if (c.GearEfficiency is not null)
        {
            Section.Context.Note($"motor \"{_data.Name}\": {c.GearEfficiencyNote}", "about a quarter of it: the errors of stall torque, stall current and no-load speed meet in it (estimate)");
        }

        foreach (string warning in c.Warnings)
        {
            Section.Context.Warning(Section.Place, $"motor \"{_data.Name}\": {warning}", "check the data against each other");
        }

        if (!(c.Settings.TorqueConstant > 0.0) || !(c.Settings.Resistance > 0.0))
        {
            Section.Context.Error(Section.Place, $"motor \"{_data.Name}\": these data give no positive torque constant and resistance", "check voltage, brush drop, no-load current and stall current");
            return null;
        }

        return WithInertia(isShaftOnly, _rest with
        {
            TorqueConstant = c.Settings.TorqueConstant,
            Resistance = c.Settings.Resistance,
            FrictionTorque = c.Settings.FrictionTorque,
            ViscousFriction = c.Settings.ViscousFriction,
            BrushDrop = c.Settings.BrushDrop,
        });
    }

    // The rotor's inertia as given; where no ratio tells what the gearbox's shaft feels of it, by the usual mechanical time.
    private MotorSettings WithInertia(bool isShaftOnly, MotorSettings motor)
    {
        if (!isShaftOnly)
        {
            return motor;
        }

        double inertia = MotorFromData.UsualInertia(motor);
        Section.Context.Note(
            FormattableString.Invariant($"motor \"{motor.Name}\": no gear_ratio is known, so the gearbox's shaft counts as its own (ratio 1), with {PlainNumber.Of(1e7 * inertia, 3)} g cm2 of the rotor at it, estimated by the mechanical time of 8 ms of the shelf's small brushed gearmotors"),
            "a factor of two, estimate; a can of 37 mm has up to five times as much, a brushless motor half");
        if (motor.RotorInertia > 0.0 && Section.Context.Drawn is null)
        {
            Section.Context.Warning(Section.PlaceOf("rotor_inertia"), $"motor \"{motor.Name}\": rotor_inertia is that of the bare rotor, and no gear_ratio tells what the gearbox's shaft feels of it; it is estimated instead", "add gear_ratio to the motor, or leave rotor_inertia out");
        }

        return motor with { RotorInertia = inertia };
    }

    // What the bare motor's speed says of the ratio.
    private string LikelyRatio()
    {
        double? bare = _data.NoLoadSpeed ?? (_data.Voltage * (_data.SpeedConstant ?? (1.0 / _data.TorqueConstant)));
        return bare / _data.OutputSpeed is double g ? FormattableString.Invariant($" (its speeds say about {g:G2}:1)") : " (motor turns per turn of that shaft)";
    }

    // A wrong number was complained about already; converting it would only add noise.
    private bool IsBroken() => KeyTable.Rows<MotorData>("motor").Any(r => r.Row?.Get(_data) is double.NaN);

    private static void CheckRest(Section s, MotorSettings m)
    {
        if (m.WindingToCaseThermalResistance > 0.0)
        {
            (string Key, double Value)[] needed = [("case_to_air", m.CaseToAirThermalResistance), ("winding_heat_capacity", m.WindingHeatCapacity), ("case_heat_capacity", m.CaseHeatCapacity)];
            string[] missing = [.. needed.Where(n => n.Value == 0.0).Select(n => n.Key)];
            if (missing.Length > 0)
            {
                s.Context.Error(s.PlaceOf("winding_to_case"), $"motor \"{m.Name}\" heats up, but has no {string.Join(", ", missing)}", "add them, or leave winding_to_case out: then heating is off");
            }
        }

        if (m.StandstillTorqueShare < 1.0 && m.FullTorqueSpeed == 0.0)
        {
            s.Context.Error(s.PlaceOf("standstill_torque_share"), $"motor \"{m.Name}\" starts with part of its torque, but has no speed at which it gives all of it", "add full_torque_speed = \"1500 rpm\"");
        }
    }
}
