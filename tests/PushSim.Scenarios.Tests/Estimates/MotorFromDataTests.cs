using PushSim.Powertrain;
using PushSim.Scenarios.Estimates;
using Xunit;

namespace PushSim.Scenarios.Tests.Estimates;

public class MotorFromDataTests
{
    private const double Rpm = Math.PI / 30.0;

    // 12 V on 3 ohm: 4 A; 10 mN m/A behind 20:1 at 70 %, 0.2 A of them friction: 20 (0.7 0.01 (4 - 0.2)) = 0.532 N m. Computed here
    private static readonly MotorData s_geared = new() { Name = "m", Voltage = 12.0, StallTorque = 0.532, GearRatio = 20.0, GearEfficiency = 0.7 };

    [Fact]
    public void Stall_torque_behind_gears_gives_the_resistance()
    {
        MotorSettings byTorque = Made(s_geared with { TorqueConstant = 0.01, FrictionTorque = 0.0014 });
        Close(3.0, byTorque.Resistance, "ohm");
        MotorSettings byCurrent = Made(s_geared with { TorqueConstant = 0.01, NoLoadCurrent = 0.2 });
        Close(3.0, byCurrent.Resistance, "ohm");
        Close(0.0014, byCurrent.FrictionTorque, "N m");
    }

    [Fact]
    public void Stall_torque_behind_gears_gives_the_torque_constant_and_says_so()
    {
        MotorConversion c = MotorFromData.Convert(s_geared with { StallCurrent = 4.0, NoLoadCurrent = 0.2 });
        Close(0.01, c.Settings!.TorqueConstant, "N m/A");
        Assert.Contains("Kt = 10 mN m/A from the stall torque, ratio 20 and efficiency 0.7", c.Notes);
        Assert.Contains("friction torque 1.4 mN m at the motor shaft from the no-load current 0.2 A", c.Notes);
    }

    // a quarter more torque than the constants give: 12.5 mN m/A, or an efficiency of 0.875
    [Fact]
    public void Stall_torque_against_the_constant_is_warned_of_with_numbers()
    {
        MotorConversion c = MotorFromData.Convert(s_geared with { TorqueConstant = 0.01, Resistance = 3.0, NoLoadCurrent = 0.2, StallTorque = 0.665 });
        Assert.Equal("Kt from the stall torque is 12.5 mN m/A (20:1, efficiency 0.7, 4 A), 25 % more (2.8 % may be rounding and tolerance) than the 10 mN m/A used; the stall torque is only checked, not used: Kt as given, with an efficiency of 0.7, is; gear_efficiency = 0.875 in the motor would make them agree", Assert.Single(c.Warnings));
    }

    // a gearmotor's sheet, all of it at the output shaft: 12 V, 500 rpm, 5.6 A, 8.4 kgf cm, 20.4:1. Without loss the shaft would give
    // Kt G I = V I / w0 = 12 5.6 / 52.36 = 1.2834 N m; with 0.3 A at no load (12 - 0.3 2.143) (5.6 - 0.3) / 52.36 = 1.1496 N m. By hand
    private static readonly MotorData s_sheet = new() { Name = "m", Voltage = 12.0, NoLoadSpeed = 500.0 * Rpm, StallCurrent = 5.6, GearRatio = 20.4 };

    private const double KgfCm = 0.0980665;

    [Theory]
    [InlineData(8.4, null, 0.6418)]
    [InlineData(8.4, 0.3, 0.7166)]
    [InlineData(5.0, null, 0.3821)]
    [InlineData(13.0, null, 0.9934)]
    public void A_stall_torque_that_nothing_else_needs_gives_the_gear_efficiency(double kgfCm, double? noLoadCurrent, double efficiency)
    {
        MotorConversion c = MotorFromData.Convert(s_sheet with { StallTorque = kgfCm * KgfCm, NoLoadCurrent = noLoadCurrent });
        Assert.Empty(c.Warnings);
        double eta = Assert.IsType<double>(c.GearEfficiency);
        Assert.Equal(efficiency, eta, 1e-4);
        MotorSettings m = c.Settings!;
        Close(kgfCm * KgfCm, ((eta * m.TorqueConstant * 5.6) - m.FrictionTorque) * 20.4, "N m");
        Assert.Equal(noLoadCurrent is null, c.GearEfficiencyNote.Contains("the motor's own friction included", StringComparison.Ordinal));
    }

    [Fact]
    public void The_efficiency_from_the_stall_torque_says_how_it_was_found() =>
        Assert.Equal(
            "gear efficiency 64.2 % from the stall torque: the shaft gives 0.8238 N m of the 1.283 N m that 5.6 A would give through 20.4:1 without loss, the motor's own friction included, since no no-load current is given",
            MotorFromData.Convert(s_sheet with { StallTorque = 8.4 * KgfCm }).GearEfficiencyNote);

    // 0.29 and 1.03 times 1.2834 N m are no gearbox; 1.02 is a sheet's scatter: 2 % each of two values, 2.83 % together
    [Theory]
    [InlineData(0.29, "; the stall torque is only checked, not used: Kt from the no-load speed, with no gear loss, is; gear_efficiency = 0.29 in the motor would make them agree, and a higher one once a no-load current is given")]
    [InlineData(1.03, "; the stall torque is only checked, not used: Kt from the no-load speed, with no gear loss, is; no gear efficiency would make them agree")]
    [InlineData(1.02, null)]
    public void A_stall_torque_that_no_gearbox_explains_is_said_not_to_be_used(double share, string? warning)
    {
        MotorConversion c = MotorFromData.Convert(s_sheet with { StallTorque = share * 12.0 * 5.6 / (500.0 * Rpm) });
        Assert.Null(c.GearEfficiency);
        Assert.Equal(warning is null, c.Warnings.Count == 0);
        Assert.All(c.Warnings, w => Assert.EndsWith(warning!, w));
    }

    // nothing is estimated where an efficiency is given, where there are no gears, and where the stall torque is needed for Kt or R
    [Fact]
    public void A_stall_torque_that_is_needed_or_has_no_gears_gives_no_efficiency()
    {
        MotorData all = s_sheet with { StallTorque = 8.4 * KgfCm };
        Assert.Null(MotorFromData.Convert(all with { GearEfficiency = 0.8 }).GearEfficiency);
        Assert.Null(MotorFromData.Convert(all with { GearRatio = 1.0 }).GearEfficiency);
        Assert.Null(MotorFromData.Convert(all with { NoLoadSpeed = null }).GearEfficiency);
        Assert.Null(MotorFromData.Convert(all with { StallCurrent = null }).GearEfficiency);
        Assert.Null(MotorFromData.Convert(all with { Voltage = null, Resistance = 2.0 }).GearEfficiency);
    }

    // whatever of friction is known, following the warning ends it
    [Theory]
    [InlineData(null, null, 0.0)]
    [InlineData(0.3, null, 0.0)]
    [InlineData(0.3, null, 1e-6)]
    [InlineData(0.3, 0.001, 0.0)]
    [InlineData(null, 0.001, 0.0)]
    public void An_efficiency_as_advised_ends_the_warning(double? noLoadCurrent, double? friction, double viscous)
    {
        MotorData data = s_sheet with { StallTorque = 8.4 * KgfCm, NoLoadCurrent = noLoadCurrent, FrictionTorque = friction, ViscousFriction = viscous };
        string warning = Assert.Single(MotorFromData.Convert(data with { GearEfficiency = 0.9 }).Warnings);
        const string Before = "gear_efficiency = ";
        int at = warning.IndexOf(Before, StringComparison.Ordinal) + Before.Length;
        double advised = double.Parse(warning[at..].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Empty(MotorFromData.Convert(data with { GearEfficiency = advised }).Warnings);
        Assert.Equal(noLoadCurrent is null && friction is null, warning.EndsWith("a higher one once a no-load current is given", StringComparison.Ordinal));
    }

    // 1e-5 N m s/rad at 1140 rad/s of the motor, 57 of the shaft
    [Fact]
    public void More_viscous_friction_than_there_is_friction_is_warned_of_with_numbers()
    {
        MotorConversion c = MotorFromData.Convert(s_geared with { StallTorque = null, TorqueConstant = 0.01, Resistance = 3.0, NoLoadCurrent = 0.2, NoLoadSpeed = 57.0, ViscousFriction = 1e-5 });
        Assert.Equal("viscous friction 11.4 mN m at no load is more than all friction 1.4 mN m that 0.2 A shows; dry friction is taken as 0", Assert.Single(c.Warnings));
        Assert.Equal(0.0, c.Settings!.FrictionTorque);
    }

    [Fact]
    public void The_no_load_speed_is_told_as_that_of_the_shaft() =>
        Assert.Contains(MotorFromData.Convert(new MotorData { Name = "m", Voltage = 12.0, NoLoadSpeed = 570.0 * Rpm, Resistance = 3.0, GearRatio = 20.0 }).Notes, n => n.EndsWith("and no-load speed 570 rpm at the shaft", StringComparison.Ordinal));

    // problem seen: 6 V, no load 100 rad/s; blocked 2 A; k = 0.06, R = 3 computed here
    [Fact]
    public void Two_tests_locate_the_constants()
    {
        MotorSettings m = Made(new MotorData { Name = "m", Voltage = 6.0, NoLoadSpeed = 100.0, LockedRotorVoltage = 6.0, LockedRotorCurrent = 2.0 });
        Close(3.0, m.Resistance, "ohm");
        Close(0.06, m.TorqueConstant, "V s/rad");

        // under a viscous load b = 0.002 N m s: w = k V / (R b + k^2) = 37.5 rad/s
        Close(37.5, m.TorqueConstant * 6.0 / ((m.Resistance * 0.002) + (m.TorqueConstant * m.TorqueConstant)), "rad/s");
    }

    // Fitzgerald, Kingsley, Umans, Electric Machinery, permanent-magnet dc motor example (from memory); unrounded numbers computed
    [Fact]
    public void Resistance_and_no_load_test_give_the_books_motor()
    {
        MotorSettings m = Made(new MotorData { Name = "m", Resistance = 1.03, Voltage = 50.0, NoLoadSpeed = 2100.0 * Rpm, NoLoadCurrent = 1.25 });
        Assert.Equal(0.2215096, m.TorqueConstant, 5e-8);
        double loss = m.FrictionTorque * 2100.0 * Rpm;
        Assert.Equal(60.891, loss, 5e-4);
        double e = m.TorqueConstant * 1700.0 * Rpm;
        double i = (48.0 - e) / m.Resistance;
        Assert.Equal(8.3166, i, 5e-5);
        // the book's shaft power takes the no-load loss as the same at 1700 rpm
        Assert.Equal(267.06, (e * i) - loss, 5e-3);
    }

    // Hughes, Electric Motors and Drives, dc motor worked example (from memory): full load 1000 rpm; 999.84 computed here
    [Fact]
    public void Brush_drop_is_taken_off_the_voltage()
    {
        MotorSettings m = Made(new MotorData { Name = "m", Voltage = 500.0, Resistance = 1.0, BrushDrop = 2.0, NoLoadSpeed = 1040.0 * Rpm, NoLoadCurrent = 0.8 });
        double fullLoad = (500.0 - m.BrushDrop - (20.0 * m.Resistance)) / m.TorqueConstant / Rpm;
        Assert.Equal(999.84, fullLoad, 5e-3);
        Assert.Equal(2.0, m.BrushDrop);
    }

    // 24 mm can of a university design course (2008): R 1.7, K 2.0 mN m/A; 6 V / 24 000 rpm gives 2.39, 19 % more
    [Fact]
    public void A_torque_constant_against_its_no_load_speed_is_warned_of_with_numbers()
    {
        MotorConversion c = MotorFromData.Convert(new MotorData { Name = "m", Resistance = 1.7, TorqueConstant = 2.0e-3, Voltage = 6.0, NoLoadSpeed = 24000.0 * Rpm, StallCurrent = 3.5 });
        string warning = Assert.Single(c.Warnings);
        Assert.Contains("2.387", warning);
        Assert.Contains("19 % more", warning);
        Assert.Equal(2.0e-3, c.Settings!.TorqueConstant);
        // 6 V across 1.7 ohm: 3.53 A against the 3.5 A given is no contradiction; peak power 4.398 W computed here
        double stall = c.Settings.TorqueConstant * 3.5;
        Assert.Equal(4.398, stall / 2.0 * (24000.0 * Rpm / 2.0), 5e-4);
    }

    // 30 mm can (student's measurements): R 2.92 ohm, I0 0.19 A, 7200 rpm at 12 V; its sheet says 6.8 A stall, 12 V / 2.92 ohm is 4.11 A
    [Fact]
    public void A_stall_current_against_the_resistance_is_warned_of_with_numbers()
    {
        MotorConversion c = MotorFromData.Convert(new MotorData { Name = "m", Resistance = 2.92, Voltage = 12.0, NoLoadSpeed = 7200.0 * Rpm, NoLoadCurrent = 0.19, StallCurrent = 6.8 });
        string warning = Assert.Single(c.Warnings);
        Assert.Contains("4.11 A", warning);
        Assert.Contains("6.8 A", warning);
        Assert.Contains("65 % more", warning);
        // (12 - 0.19 2.92)/753.98 = 15.18 mN m/A computed here; the student measured 15.5 to 15.9
        Assert.Equal(15.180e-3, c.Settings!.TorqueConstant, 5e-7);
    }

    // computed here: the whole sheet of a made-up gearmotor, forwards from its constants and back
    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void A_sheet_made_from_constants_gives_them_back(bool hasStallCurrent, bool hasNoLoadSpeed)
    {
        const double R = 3.2, Kt = 7e-3, I0 = 0.15, G = 25.0, Eta = 0.75, V = 12.0, B = 2e-7;
        double w0 = (V - (I0 * R)) / Kt;
        double tau0 = (Eta * Kt * I0) - (B * w0);
        double stall = V / R;
        MotorSettings m = Made(new MotorData
        {
            Name = "m",
            Voltage = V,
            GearRatio = G,
            GearEfficiency = Eta,
            NoLoadCurrent = I0,
            NoLoadSpeed = hasNoLoadSpeed ? w0 / G : null,
            SpeedConstant = hasNoLoadSpeed ? null : 1.0 / Kt,
            StallCurrent = hasStallCurrent ? stall : null,
            Resistance = hasStallCurrent ? null : R,
            StallTorque = (Eta * Kt * G * stall) - (tau0 * G),
            ViscousFriction = B,
        });
        Close(R, m.Resistance, "ohm");
        Close(Kt, m.TorqueConstant, "N m/A");
        Close(tau0, m.FrictionTorque, "N m");
    }

    // T = eta Kt G I - tau0 G with tau0 = eta Kt I0, backwards for I, then R = V/I
    [Fact]
    public void Stall_torque_alone_gives_the_resistance()
    {
        const double R = 3.2, Kt = 7e-3, I0 = 0.15, G = 25.0, Eta = 0.75, V = 12.0;
        MotorSettings m = Made(new MotorData { Name = "m", Voltage = V, GearRatio = G, GearEfficiency = Eta, NoLoadCurrent = I0, TorqueConstant = Kt, StallTorque = Eta * Kt * G * ((V / R) - I0) });
        Close(R, m.Resistance, "ohm");
    }

    [Fact]
    public void Stall_torque_and_current_give_the_torque_constant()
    {
        MotorSettings m = Made(new MotorData { Name = "m", Resistance = 3.0, StallCurrent = 4.0, StallTorque = 0.6 * 7e-3 * 30.0 * (4.0 - 0.2), NoLoadCurrent = 0.2, GearRatio = 30.0, GearEfficiency = 0.6 });
        Close(7e-3, m.TorqueConstant, "N m/A");
    }

    [Theory]
    [InlineData(1.028, 0)]
    [InlineData(1.029, 1)]
    [InlineData(0.972, 0)]
    [InlineData(0.971, 1)]
    public void Stall_torque_against_no_load_speed_is_warned_of_above_the_scatter_of_both(double factor, int warnings)
    {
        const double R = 3.0, Kt = 7e-3, I0 = 0.2, G = 30.0, Eta = 0.6, V = 12.0;
        MotorConversion c = MotorFromData.Convert(new MotorData
        {
            Name = "m",
            Voltage = V,
            NoLoadSpeed = (V - (I0 * R)) / Kt / G,
            NoLoadCurrent = I0,
            StallCurrent = V / R,
            StallTorque = factor * Eta * Kt * G * ((V / R) - I0),
            GearRatio = G,
            GearEfficiency = Eta,
        });
        Assert.Equal(warnings, c.Warnings.Count);
    }

    // the same sheet said either way; the bare motor's torque is a twentieth. By hand
    [Fact]
    public void Output_data_are_those_of_the_gearboxs_shaft()
    {
        MotorData sheet = s_sheet with { StallTorque = 8.4 * KgfCm };
        MotorConversion c = MotorFromData.Convert(sheet with { NoLoadSpeed = null, StallTorque = null, OutputSpeed = sheet.NoLoadSpeed, OutputStallTorque = sheet.StallTorque });
        Assert.Equal(MotorFromData.Convert(sheet).Settings, c.Settings);
        Assert.Equal(0.6418, c.GearEfficiency!.Value, 1e-4);
    }

    // no ratio is known: V/w0 = 12 V / 52.36 rad/s = 229.2 mN m/A at the gearbox's shaft, whose loss shows all the same; 8 ms Kt^2/R = 8e-3 0.2292^2/2.143 = 1.961e-4 kg m2. By hand
    [Fact]
    public void Without_a_ratio_the_gearmotor_counts_as_a_motor_with_the_gearboxs_shaft()
    {
        MotorConversion c = MotorFromData.Convert(new MotorData { Name = "m", Voltage = 12.0, OutputSpeed = 500.0 * Rpm, StallCurrent = 5.6, OutputStallTorque = 8.4 * KgfCm });
        Assert.Empty(c.Warnings);
        Assert.Equal(0.22918, c.Settings!.TorqueConstant, 1e-5);
        Assert.Equal(0.6418, c.GearEfficiency!.Value, 1e-4);
        Assert.Equal(1.961e-4, MotorFromData.UsualInertia(c.Settings), 1e-7);
    }

    [Theory]
    [InlineData(450.0, "no_load_speed is 450 rpm at the output shaft, 10 % less (2.8 % may be rounding and tolerance) than the 500 rpm of output_speed, which is used")]
    [InlineData(10200.0, "no_load_speed is 10200 rpm at the output shaft, 1940 % more (2.8 % may be rounding and tolerance) than the 500 rpm of output_speed, which is used; it looks like that of the bare motor: leave it out")]
    [InlineData(510.0, null)]
    public void Two_speeds_of_the_shaft_that_disagree_are_told_with_both_numbers(double rpm, string? warning)
    {
        MotorConversion c = MotorFromData.Convert(s_sheet with { OutputSpeed = 500.0 * Rpm, NoLoadSpeed = rpm * Rpm });
        Assert.Equal(warning is null ? [] : [warning], c.Warnings);
        Close(12.0 / (500.0 * Rpm * 20.4), c.Settings!.TorqueConstant, "N m/A");
    }

    [Fact]
    public void Two_stall_torques_of_the_shaft_that_disagree_are_told_with_both_numbers() =>
        Assert.Equal(
            "stall_torque is 0.7 N m at the output shaft, 13 % less (2.8 % may be rounding and tolerance) than the 0.8 N m of output_stall_torque, which is used",
            Assert.Single(MotorFromData.Convert(s_sheet with { OutputStallTorque = 0.8, StallTorque = 0.7 }).Warnings));

    [Theory]
    [InlineData(null, 0.007, "resistance")]
    [InlineData(3.0, null, "torque constant")]
    public void Data_that_determine_nothing_say_what_is_missing(double? r, double? kt, string missing)
    {
        MotorConversion c = MotorFromData.Convert(new MotorData { Name = "m", Resistance = r, TorqueConstant = kt, NoLoadCurrent = 0.1 });
        Assert.Null(c.Settings);
        Assert.Contains(missing, c.Missing);
    }

    // nothing to divide the torque by: no infinite constant
    [Theory]
    [InlineData(1.0)]
    [InlineData(0.8)]
    public void A_stall_current_no_greater_than_the_no_load_current_gives_no_constant(double stall)
    {
        MotorConversion c = MotorFromData.Convert(new MotorData { Name = "m", Voltage = 6.0, StallCurrent = stall, NoLoadCurrent = 1.0, StallTorque = 0.01 });
        Assert.Null(c.Settings);
        Assert.Contains("torque constant", c.Missing);
    }

    [Fact]
    public void Notes_say_how_each_number_was_found()
    {
        MotorConversion c = MotorFromData.Convert(new MotorData { Name = "m", Voltage = 12.0, NoLoadSpeed = 50.0, NoLoadCurrent = 0.1, StallCurrent = 4.0, GearRatio = 20.0 });
        Assert.Contains(c.Notes, n => n.Contains("R = 3 ohm", StringComparison.Ordinal));
        Assert.Contains(c.Notes, n => n.Contains("Kt = 11.7 mN m/A", StringComparison.Ordinal));
        Assert.Contains(c.Notes, n => n.Contains("friction torque 1.17 mN m", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1365.0, "Kv = 1365 rpm/V")]
    [InlineData(950.5, "Kv = 950.5 rpm/V")]
    [InlineData(12000.0, "Kv = 12000 rpm/V")]
    public void Speed_constants_are_told_without_an_exponent(double kv, string told)
    {
        MotorConversion c = MotorFromData.Convert(new MotorData { Name = "m", Resistance = 1.0, SpeedConstant = kv * Math.PI / 30.0 });
        Assert.Contains(c.Notes, n => n.EndsWith(told, StringComparison.Ordinal));
    }

    private static MotorSettings Made(MotorData data)
    {
        MotorConversion c = MotorFromData.Convert(data);
        Assert.Empty(c.Warnings);
        return Assert.IsType<MotorSettings>(c.Settings);
    }

    private static void Close(double expected, double actual, string unit) =>
        Assert.True(Math.Abs(actual - expected) <= 1e-12 * Math.Abs(expected), FormattableString.Invariant($"expected {expected:R} {unit}, got {actual:R}, difference {actual - expected:G3}"));
}
