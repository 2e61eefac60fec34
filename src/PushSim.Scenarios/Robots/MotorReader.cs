using PushSim.Powertrain;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Robots;

/// <summary>A motor of a file: its data, kept until the drive that uses it supplies a missing gear efficiency, or its stall torque does.</summary>
internal sealed class MotorReader
{
    // What a motor can be determined from: all that is not known unless it is given.
    private static readonly string[] DataKeys = [.. KeyTable.Rows<MotorData>("motor").Where(r => r.Row is KeyRow<MotorData> row && row.Get(Blank.MotorData) is null).Select(r => r.Key.Name)];

    private readonly MotorData _data;

    // What no conversion touches: inertia, heat, sensorless limits.
    private readonly MotorSettings _rest;

    // What it became at each gear efficiency [1] that a drive asked for.
    private readonly List<(double? Efficiency, MotorSettings? Motor)> _made = [];

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
        WarnOfOtherMotor(section);
    }

    /// <summary>Motor turns per turn of the shaft at which its data hold [1]; null if the file gives none.</summary>
    public double? GearRatio { get; }

    /// <summary>Efficiency of that gearbox as the file gives it, by itself or by stages, 0..1 [1]; null if the file says nothing of it, NaN if what it says is wrong.</summary>
    public double? GearEfficiency { get; }

    /// <summary>Efficiency that the stall torque shows [1]; null if it shows none, or is not asked because one is given.</summary>
    public double? EfficiencyFromTorque => GearEfficiency is null && !IsBroken() ? MotorFromData.Convert(_data).GearEfficiency : null;

    /// <summary>True once a drive has asked for it.</summary>
    public bool IsUsed => _made.Count > 0;

    /// <summary>Its table.</summary>
    public Section Section { get; }

    /// <summary>The motor as its drive's gear efficiency makes it, null for one nobody gave; null if the data are wrong or do not determine it.</summary>
    public MotorSettings? Make(double? efficiency)
    {
        int known = _made.FindIndex(m => m.Efficiency.Equals(efficiency));
        if (known < 0)
        {
            known = _made.Count;
            _made.Add((efficiency, Convert(efficiency)));
        }

        return _made[known].Motor;
    }

    private MotorSettings? Convert(double? efficiency)
    {
        MotorConversion c = MotorFromData.Convert(_data with { GearEfficiency = efficiency });
        if (IsBroken() || efficiency is double.NaN)
        {
            return null;
        }

        if (c.Settings is null)
        {
            Section.Missing(DataKeys, $"motor \"{_data.Name}\" is not determined", $"missing: {c.Missing}");
            return null;
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

        return _rest with
        {
            TorqueConstant = c.Settings.TorqueConstant,
            Resistance = c.Settings.Resistance,
            FrictionTorque = c.Settings.FrictionTorque,
            ViscousFriction = c.Settings.ViscousFriction,
            BrushDrop = c.Settings.BrushDrop,
        };
    }

    // Speed or torque at the output shaft and a ratio give the motor's constant; with another ratio they give another motor, whose gearbox turns as before.
    private void WarnOfOtherMotor(Section s)
    {
        bool isOfOutput = _data.TorqueConstant is null && _data.SpeedConstant is null && (_data.NoLoadSpeed ?? _data.StallTorque) is not null;
        if (s.Context.Drawn is null && isOfOutput && s.PlaceSetAnew("gear_ratio") is Place place)
        {
            string key = _data.NoLoadSpeed is null ? "stall_torque" : "no_load_speed";
            s.Context.Warning(place, $"motor \"{_data.Name}\": its {key} is that of the output shaft, so another gear_ratio of the motor makes another motor, not another gear", "set gear_ratio of the drives anew (\"drive.*.gear_ratio\"), or give the motor a speed_constant or torque_constant");
        }
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
