namespace PushSim.Powertrain;

/// <summary>What <see cref="MotorFromData"/> made of the data.</summary>
/// <param name="Settings">The motor; null if the data do not determine it.</param>
/// <param name="Missing">What is missing, in words; empty if nothing is.</param>
/// <param name="Notes">How each number was found, in sentences.</param>
/// <param name="Warnings">Contradictions in the data, with the numbers.</param>
public sealed record MotorConversion(MotorSettings? Settings, string Missing, IReadOnlyList<string> Notes, IReadOnlyList<string> Warnings)
{
    /// <summary>Efficiency of the gearbox where the stall torque gave it [1]; null: it did not.</summary>
    public double? GearEfficiency { get; init; }

    /// <summary>How it was found, in a sentence; empty if it was not.</summary>
    public string GearEfficiencyNote { get; init; } = "";
}

/// <summary>A motor's constants from whatever data there are, by the steady equations of a brushed permanent-magnet motor with a
/// gearbox whose loss acts as friction:
/// <code>
/// V = R i + Ke w + V_brush                         stall: R = (V - V_brush)/I_stall
/// no load: Kt = (V - V_brush - I0 R)/w0            tau0 = eta Kt I0 - b w0
/// stall torque: T = eta Kt G I - tau0 G
/// </code>
/// with w0 the no-load speed at the motor shaft. The first form in the order given, measured, derived is used; the others
/// are compared with it. A stall torque that the rest does not need gives eta, if data taken through a gearbox say nothing of it:
/// what the shaft lacks of Kt G (I - I0) is lost in the gears. Limits: one temperature, no magnet weakening, I0 taken as constant.</summary>
public static class MotorFromData
{
    // Data sheets round to two digits; more than this is a contradiction [1].
    private const double Contradiction = 0.05;

    // A stall torque that would need a gearbox of less than this is taken for a mistake: four spur stages hold 0.66, a worm 0.5 (see GearStages) [1].
    private const double LeastEfficiency = 0.3;

    // Efficiencies a robot file may state [1].
    private const double LeastStated = 0.05;

    /// <summary>The motor of these data.</summary>
    public static MotorConversion Convert(MotorData data) => new Work(data).Solve();

    private sealed class Work(MotorData d)
    {
        private readonly List<string> _notes = [];
        private readonly List<string> _warnings = [];
        private readonly double _g = d.GearRatio;
        private readonly double _b = d.ViscousFriction;
        private double _eta = d.GearEfficiency ?? 1.0;
        private string _source = "";

        // No-load speed at the motor shaft [rad/s].
        private double? MotorSpeed => d.NoLoadSpeed * d.GearRatio;

        private double? InnerVoltage => d.Voltage - d.BrushDrop;

        public MotorConversion Solve()
        {
            double? r = Resistance();
            double? kt = Constant(r);
            bool isTorqueSpare = r is not null && _source.Length > 0;
            r ??= ResistanceFromTorque(kt);
            if (r is null || kt is null)
            {
                return new MotorConversion(null, Missing(r, kt), _notes, _warnings);
            }

            string note = isTorqueSpare ? EfficiencyFromTorque(r.Value, kt.Value) : "";
            CompareStallTorque(r.Value, kt.Value, isTorqueSpare);
            double tau0 = Friction(r.Value, kt.Value);
            var settings = new MotorSettings
            {
                Name = d.Name,
                TorqueConstant = kt.Value,
                Resistance = r.Value,
                FrictionTorque = tau0,
                ViscousFriction = _b,
                BrushDrop = d.BrushDrop,
            };
            return new MotorConversion(settings, "", _notes, _warnings) { GearEfficiency = note.Length > 0 ? _eta : null, GearEfficiencyNote = note };
        }

        private double? Resistance()
        {
            double? locked = (d.LockedRotorVoltage - d.BrushDrop) / d.LockedRotorCurrent;
            double? stall = InnerVoltage / d.StallCurrent;
            double? r = d.Resistance ?? locked ?? stall;
            if (d.Resistance is null && locked is not null)
            {
                _notes.Add(Say($"R = {locked:G4} ohm from locked-rotor {d.LockedRotorVoltage:G4} V and {d.LockedRotorCurrent:G4} A"));
            }
            else if (d.Resistance is null && stall is not null)
            {
                _notes.Add(Say($"R = {stall:G4} ohm from {d.Voltage:G4} V and stall current {d.StallCurrent:G4} A"));
            }

            Compare("resistance in ohm", locked, "the locked-rotor test", r, 1.0);
            if (r is not null && stall is not null && IsFar(stall.Value, r.Value))
            {
                _warnings.Add(Say($"stall current: {d.Voltage:G4} V across {r:G4} ohm gives {InnerVoltage / r:G4} A, the data say {d.StallCurrent:G4} A ({Percent(d.StallCurrent!.Value, InnerVoltage!.Value / r.Value)}); the resistance is used"));
            }

            return r;
        }

        private double? Constant(double? r)
        {
            double? kv = 1.0 / d.SpeedConstant;
            double? free = FromNoLoad(r);
            double? torque = FromStallTorque(d.StallCurrent ?? InnerVoltage / r);
            double? kt = d.TorqueConstant ?? kv ?? free ?? torque;
            _source = d.TorqueConstant is not null ? "as given" : kv is not null ? "from the speed constant" : free is not null ? "from the no-load speed" : "";
            if (d.TorqueConstant is null && kv is not null)
            {
                _notes.Add(Say($"Kt = {1e3 * kv:G4} mN m/A as the reciprocal of Kv = {Rpm(d.SpeedConstant!.Value)} rpm/V"));
            }
            else if (d.TorqueConstant is null && free is not null)
            {
                _notes.Add(Say($"Kt = {1e3 * free:G4} mN m/A from {d.Voltage:G4} V and no-load speed {d.NoLoadSpeed * 30 / Math.PI:F0} rpm at the shaft"));
            }
            else if (d.TorqueConstant is null && torque is not null)
            {
                _notes.Add(Say($"Kt = {1e3 * torque:G4} mN m/A from the stall torque, ratio {_g:G4} and efficiency {_eta:G3}"));
            }

            Compare("Kt in mN m/A", kv, "the speed constant", kt, 1e3);
            Compare("Kt in mN m/A", free, "the no-load speed", kt, 1e3);
            return kt;
        }

        // Kt = (V - V_brush - I0 R)/w0; without R the drop I0 R is left out, without I0 there is none.
        private double? FromNoLoad(double? r) => MotorSpeed is > 0.0 ? (InnerVoltage - ((d.NoLoadCurrent ?? 0.0) * (r ?? 0.0))) / MotorSpeed : null;

        // T/G = eta Kt (I - I0) + b w0, or with a given tau0: T/G = eta Kt I - tau0
        private double? FromStallTorque(double? current)
        {
            double? motorTorque = d.StallTorque / _g;
            double? kt = d.FrictionTorque is double tau0
                ? (motorTorque + tau0) / (_eta * current)
                : (motorTorque - (_b * (MotorSpeed ?? 0.0))) / (_eta * (current - (d.NoLoadCurrent ?? 0.0)));

            // a stall current no greater than the no-load current leaves nothing to divide by
            return kt is > 0.0 and < double.PositiveInfinity ? kt : null;
        }

        // Stall torque and Kt give the stall current, and that gives R.
        private double? ResistanceFromTorque(double? kt)
        {
            double? lost = d.FrictionTorque is double tau0 ? tau0 / (_eta * kt) : (d.NoLoadCurrent ?? 0.0) - (_b * (MotorSpeed ?? 0.0) / (_eta * kt));
            double? current = (d.StallTorque / (_g * _eta * kt)) + lost;
            double? r = InnerVoltage / current;
            if (r is null)
            {
                return null;
            }

            _notes.Add(Say($"R = {r:G4} ohm from the stall torque: it takes {current:G4} A at {d.Voltage:G4} V"));
            return r;
        }

        // The efficiency at which the shaft gives the stall torque stated, and how it was found; nothing where one is given or there are no gears.
        private string EfficiencyFromTorque(double r, double kt)
        {
            double? current = d.StallCurrent ?? InnerVoltage / r;
            if (d.GearEfficiency is not null || _g == 1.0 || !(FromStallTorque(current) / kt is >= LeastEfficiency and < 1.0 and double eta))
            {
                return "";
            }

            _eta = eta;
            string friction = HasFriction ? "" : ", the motor's own friction included, since no no-load current is given";
            return Say($"gear efficiency {100.0 * eta:G3} % from the stall torque: the shaft gives {d.StallTorque:G4} N m of the {d.StallTorque / eta:G4} N m that {current:G4} A would give through {_g:G4}:1 without loss{friction}");
        }

        private void CompareStallTorque(double r, double kt, bool isTorqueSpare)
        {
            double? current = d.StallCurrent ?? InnerVoltage / r;
            double? fromTorque = FromStallTorque(current);
            if (fromTorque is double other && IsFar(other, kt))
            {
                string known = d.GearEfficiency is null ? _g == 1.0 ? "no gears" : "no gear loss" : Say($"an efficiency of {_eta:G3}");
                string use = isTorqueSpare ? Say($"; the stall torque is only checked, not used: Kt {_source}, with {known}, is") : "";
                _warnings.Add(Say($"Kt from the stall torque is {1e3 * other:G4} mN m/A ({_g:G4}:1, efficiency {_eta:G3}, {current:G4} A), {Percent(other, kt)} than the {1e3 * kt:G4} mN m/A used{use}; {Agreeing(_eta * other / kt)}"));
            }
        }

        // What efficiency would end the contradiction. Without a no-load current it holds the motor's friction as well.
        private string Agreeing(double eta) => eta > 1.0 || eta < LeastStated
            ? "no gear efficiency would make them agree"
            : Say($"gear_efficiency = {eta:G3} in the motor would make them agree{(HasFriction ? "" : ", and a higher one once a no-load current is given")}");

        private bool HasFriction => (d.FrictionTorque ?? d.NoLoadCurrent) is > 0.0;

        private double Friction(double r, double kt)
        {
            if (d.FrictionTorque is double given)
            {
                return given;
            }

            if (d.NoLoadCurrent is not double i0)
            {
                _notes.Add("friction torque taken as 0: no no-load current given");
                return 0.0;
            }

            // without a no-load speed the viscous part needs the one that follows from V, else the one at 0
            double w0 = MotorSpeed ?? Math.Max(0.0, ((InnerVoltage - (i0 * r)) / kt) ?? 0.0);
            double tau0 = (_eta * kt * i0) - (_b * w0);
            if (tau0 < 0.0)
            {
                _warnings.Add(Say($"viscous friction {1e3 * _b * w0:G4} mN m at no load is more than all friction {1e3 * _eta * kt * i0:G4} mN m that {i0:G4} A shows; dry friction is taken as 0"));
                return 0.0;
            }

            _notes.Add(Say($"friction torque {1e3 * tau0:G4} mN m at the motor shaft from the no-load current {i0:G4} A"));
            return tau0;
        }

        private void Compare(string what, double? other, string source, double? used, double scale)
        {
            if (other is double o && used is double u && IsFar(o, u))
            {
                _warnings.Add(Say($"{what} from {source} is {scale * o:G4}, {Percent(o, u)} than the {scale * u:G4} used"));
            }
        }

        private string Missing(double? r, double? kt)
        {
            List<string> wanted = [];
            if (r is null)
            {
                wanted.Add("resistance (or voltage and stall current, or locked-rotor voltage and current)");
            }

            if (kt is null)
            {
                wanted.Add("speed constant or torque constant (or voltage and no-load speed, or stall torque with a stall current above the no-load current)");
            }

            return string.Join(" and ", wanted);
        }

        // Four digits, from ten thousand on whole and without an exponent.
        private static string Rpm(double speed)
        {
            double rpm = speed * 30 / Math.PI;
            return rpm < 1e4 ? Say($"{rpm:G4}") : Say($"{rpm:F0}");
        }

        private static bool IsFar(double a, double b) => Math.Abs(a - b) > Contradiction * Math.Abs(b);

        private static string Percent(double a, double b) => Say($"{100.0 * Math.Abs((a / b) - 1.0):F0} % {(a > b ? "more" : "less")}");

        private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
    }
}
