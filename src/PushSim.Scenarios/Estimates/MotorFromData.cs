using PushSim.Powertrain;

namespace PushSim.Scenarios.Estimates;

/// <summary>A motor's constants from whatever data there are, by the steady equations of a brushed permanent-magnet motor with a
/// gearbox whose loss acts as friction:
/// <code>
/// V = R i + Ke w + V_brush                         stall: R = (V - V_brush)/I_stall
/// no load: Kt = (V - V_brush - I0 R)/w0            tau0 = eta Kt I0 - b w0
/// stall torque: T = eta Kt G I - tau0 G
/// </code>
/// with w0 the no-load speed at the motor shaft. The first form in the order given, measured, derived is used; the others
/// are compared with it: what they differ by is told if it is more than the root of the sum of squares of what each may be off, since the errors of
/// two tests are independent and a plain sum would hide a contradiction of 5 %. A stall torque that the rest does not need gives eta, if data taken through a gearbox say nothing of it:
/// what the shaft lacks of Kt G (I - I0) is lost in the gears. Limits: one temperature, no magnet weakening, I0 taken as constant.</summary>
public static class MotorFromData
{
    // What a value made of data without stated tolerance may be off besides the rounding of their last digits: two motors of a lot (common practice, no source) [1].
    private const double Scatter = 0.02;

    // Values that differ by less were found in the same way [1].
    private const double Same = 1e-9;

    // J R/Kt^2, which gears do not change. The shelf's brushed gearmotors of 12 to 30 mm have 5.8 to 10 ms, those of 37 mm 37 ms, brushless ones 3 to 4 ms: computed here [s].
    private const double MechanicalTime = 8e-3;

    // A stall torque that would need a gearbox of less than this is taken for a mistake: four spur stages hold 0.66, a worm 0.5 (see GearStages) [1].
    private const double LeastEfficiency = 0.3;

    // Efficiencies a robot file may state [1].
    private const double LeastStated = 0.05;

    /// <summary>The motor of these data.</summary>
    public static MotorConversion Convert(MotorData data) => new Work(data).Solve();

    /// <summary>Inertia that the shaft of these constants feels of the rotor, by the mechanical time J R/Kt^2 usual of small brushed gearmotors; a large can has up to five times as much [kg m^2].</summary>
    /// <param name="motor">The motor, its constants at that shaft.</param>
    public static double UsualInertia(MotorSettings motor) => MechanicalTime * motor.TorqueConstant * motor.TorqueConstant / motor.Resistance;

    private sealed class Work(MotorData d)
    {
        private readonly List<string> _notes = [];
        private readonly List<string> _warnings = [];
        private readonly double _g = d.GearRatio;
        private readonly double _b = d.ViscousFriction;
        private double _eta = d.GearEfficiency ?? 1.0;
        private string _source = "";

        private MotorData Data => d;

        // At the output shaft [rad/s; N m].
        private double? Speed => d.OutputSpeed ?? d.NoLoadSpeed;

        private double? Torque => d.OutputStallTorque ?? d.StallTorque;

        // No-load speed at the motor shaft [rad/s].
        private double? MotorSpeed => Speed * _g;

        private double? InnerVoltage => d.Voltage - d.BrushDrop;

        private bool HasGears => _g != 1.0 || (d.OutputSpeed ?? d.OutputStallTorque) is not null;

        // Ways to the resistance [ohm].
        private double? Locked => (d.LockedRotorVoltage - d.BrushDrop) / d.LockedRotorCurrent;

        private double? Stalled => InnerVoltage / d.StallCurrent;

        private double? Resistance => d.Resistance ?? Locked ?? Stalled;

        // Ways to Kt [N m/A]; without R the drop I0 R is left out, without I0 there is none.
        private double? OfSpeedConstant => 1.0 / d.SpeedConstant;

        private double? OfNoLoad => MotorSpeed is > 0.0 ? (InnerVoltage - ((d.NoLoadCurrent ?? 0.0) * (Resistance ?? 0.0))) / MotorSpeed : null;

        private double? OfStallTorque => FromStallTorque(StallCurrent(Resistance));

        private double? Constant => d.TorqueConstant ?? OfSpeedConstant ?? OfNoLoad ?? OfStallTorque;

        public MotorConversion Solve()
        {
            CompareOutput();
            double? r = TellResistance();
            double? kt = TellConstant();
            bool isTorqueSpare = r is not null && _source.Length > 0;
            r ??= ResistanceFromTorque(kt);
            if (r is null || kt is null)
            {
                return new MotorConversion(null, Missing(r, kt), _notes, _warnings);
            }

            string note = isTorqueSpare ? EfficiencyFromTorque(r.Value, kt.Value) : "";
            if (note.Length == 0)
            {
                CompareStallTorque(kt.Value, isTorqueSpare);
            }

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

        private double? StallCurrent(double? r) => d.StallCurrent ?? (InnerVoltage / r);

        // Two sayings of one speed or torque.
        private void CompareOutput()
        {
            if (Disagreement(w => w.Data.NoLoadSpeed, w => w.Data.OutputSpeed) is var (speed, output, told))
            {
                string bare = Math.Abs((speed / (output * _g)) - 1.0) < 0.1 ? "; it looks like that of the bare motor: leave it out" : "";
                _warnings.Add(Say($"no_load_speed is {Rpm(speed)} rpm at the output shaft, {told} than the {Rpm(output)} rpm of output_speed, which is used{bare}"));
            }

            if (Disagreement(w => w.Data.StallTorque, w => w.Data.OutputStallTorque) is var (torque, of, difference))
            {
                _warnings.Add(Say($"stall_torque is {torque:G4} N m at the output shaft, {difference} than the {of:G4} N m of output_stall_torque, which is used"));
            }
        }

        private double? TellResistance()
        {
            double? r = Resistance;
            if (d.Resistance is null && Locked is double locked)
            {
                _notes.Add(Say($"R = {locked:G4} ohm from locked-rotor {d.LockedRotorVoltage:G4} V and {d.LockedRotorCurrent:G4} A"));
            }
            else if (d.Resistance is null && Stalled is double stalled)
            {
                _notes.Add(Say($"R = {stalled:G4} ohm from {d.Voltage:G4} V and stall current {d.StallCurrent:G4} A"));
            }

            Compare("resistance in ohm", w => w.Locked, "the locked-rotor test", w => w.Resistance, 1.0);
            if (Disagreement(w => w.Data.StallCurrent, w => w.InnerVoltage / w.Resistance) is var (said, current, told))
            {
                _warnings.Add(Say($"stall current: {d.Voltage:G4} V across {r:G4} ohm gives {current:G4} A, the data say {said:G4} A ({told}); the resistance is used"));
            }

            return r;
        }

        private double? TellConstant()
        {
            double? kv = OfSpeedConstant;
            double? free = OfNoLoad;
            _source = d.TorqueConstant is not null ? "as given" : kv is not null ? "from the speed constant" : free is not null ? "from the no-load speed" : "";
            if (d.TorqueConstant is null && kv is not null)
            {
                _notes.Add(Say($"Kt = {1e3 * kv:G4} mN m/A as the reciprocal of Kv = {Rpm(d.SpeedConstant!.Value)} rpm/V"));
            }
            else if (d.TorqueConstant is null && free is not null)
            {
                _notes.Add(Say($"Kt = {1e3 * free:G4} mN m/A from {d.Voltage:G4} V and no-load speed {Speed * 30 / Math.PI:F0} rpm at the shaft"));
            }
            else if (d.TorqueConstant is null && OfStallTorque is double torque)
            {
                _notes.Add(Say($"Kt = {1e3 * torque:G4} mN m/A from the stall torque, ratio {_g:G4} and efficiency {_eta:G3}"));
            }

            Compare("Kt in mN m/A", w => w.OfSpeedConstant, "the speed constant", w => w.Constant, 1e3);
            Compare("Kt in mN m/A", w => w.OfNoLoad, "the no-load speed", w => w.Constant, 1e3);
            return Constant;
        }

        // T/G = eta Kt (I - I0) + b w0, or with a given tau0: T/G = eta Kt I - tau0
        private double? FromStallTorque(double? current)
        {
            double? motorTorque = Torque / _g;
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
            double? current = (Torque / (_g * _eta * kt)) + lost;
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
            double? current = StallCurrent(r);
            if (d.GearEfficiency is not null || !HasGears || !(FromStallTorque(current) / kt is >= LeastEfficiency and < 1.0 and double eta))
            {
                return "";
            }

            _eta = eta;
            string friction = HasFriction ? "" : ", the motor's own friction included, since no no-load current is given";
            string gears = _g == 1.0 ? "" : Say($" through {_g:G4}:1");
            return Say($"gear efficiency {100.0 * eta:G3} % from the stall torque: the shaft gives {Torque:G4} N m of the {Torque / eta:G4} N m that {current:G4} A would give{gears} without loss{friction}");
        }

        private void CompareStallTorque(double kt, bool isTorqueSpare)
        {
            if (Disagreement(w => w.OfStallTorque, w => w.Constant) is var (other, _, told))
            {
                string known = d.GearEfficiency is null ? HasGears ? "no gear loss" : "no gears" : Say($"an efficiency of {_eta:G3}");
                string use = isTorqueSpare ? Say($"; the stall torque is only checked, not used: Kt {_source}, with {known}, is") : "";
                _warnings.Add(Say($"Kt from the stall torque is {1e3 * other:G4} mN m/A ({_g:G4}:1, efficiency {_eta:G3}, {StallCurrent(Resistance):G4} A), {told} than the {1e3 * kt:G4} mN m/A used{use}; {Agreeing(_eta * other / kt)}"));
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

        private void Compare(string what, Func<Work, double?> other, string source, Func<Work, double?> used, double scale)
        {
            if (Disagreement(other, used) is var (o, u, told))
            {
                _warnings.Add(Say($"{what} from {source} is {scale * o:G4}, {told} than the {scale * u:G4} used"));
            }
        }

        // Both values and what they differ by in words, if that is more than they may be off; null if it is not, or if one of them is not known.
        private (double Other, double Used, string Told)? Disagreement(Func<Work, double?> other, Func<Work, double?> used)
        {
            if (other(this) is not double o || used(this) is not double u)
            {
                return null;
            }

            double difference = Math.Abs((o / u) - 1.0);
            if (!(difference > Same))
            {
                return null;
            }

            double allowed = Allowed(other, used);
            string percent = difference < 0.0995 ? Say($"{100.0 * difference:F1}") : Say($"{100.0 * difference:F0}");
            return difference > allowed ? (o, u, Say($"{percent} % {(o > u ? "more" : "less")} ({100.0 * allowed:F1} % may be rounding and tolerance)")) : null;
        }

        // What the quotient of two values may be off [1]: each by the scatter and the rounding of what it is made of, where no tolerance is stated, and by the stated ones.
        // A voltage is set and not measured, so that its last digit counts for nothing.
        private double Allowed(Func<Work, double?> other, Func<Work, double?> used)
        {
            double stated = 0.0;
            (double Squares, bool IsStated, bool IsRounded)[] ways = new (double, bool, bool)[2];
            double? quotient = other(this) / used(this);
            foreach (MotorDoubt doubt in d.Doubts)
            {
                var moved = new Work(doubt.Moved);
                double change = ((other(moved) / used(moved) / quotient) - 1.0) ?? 0.0;
                bool[] moves = [!Nullable.Equals(other(moved), other(this)), !Nullable.Equals(used(moved), used(this))];
                stated += doubt.IsStated ? change * change : 0.0;
                for (int k = 0; k < 2; k++)
                {
                    // what moves both counts once
                    double squares = !doubt.IsStated && moves[k] && !(k == 1 && moves[0]) ? change * change : 0.0;
                    ways[k] = (ways[k].Squares + squares, ways[k].IsStated || (doubt.IsStated && moves[k]), ways[k].IsRounded || (!doubt.IsStated && moves[k]));
                }
            }

            return Math.Sqrt(stated + ways.Sum(w => Math.Pow((w.IsStated && !w.IsRounded ? 0.0 : Scatter) + Math.Sqrt(w.Squares), 2)));
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
                wanted.Add("speed constant or torque constant (or voltage and output_speed or no_load_speed, or stall torque with a stall current above the no-load current)");
            }

            return string.Join(" and ", wanted);
        }

        // Four digits, from ten thousand on whole and without an exponent.
        private static string Rpm(double speed)
        {
            double rpm = speed * 30 / Math.PI;
            return rpm < 1e4 ? Say($"{rpm:G4}") : Say($"{rpm:F0}");
        }

        private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
    }
}
