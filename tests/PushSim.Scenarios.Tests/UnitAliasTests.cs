using PushSim.Scenarios.Units;
using UnitsNet;
using Xunit;
using Quantity = PushSim.Scenarios.Units.Quantity;

namespace PushSim.Scenarios.Tests;

/// <summary>
/// Units as builders write them, against the factors of the package UnitsNet. Compound units are put together from its simple ones: some of its own
/// compound factors (kilogram-force centimetre) are right to eight digits only.
/// </summary>
public class UnitAliasTests
{
    private const double Relative = 1e-11;

    private static readonly double Gf = Force.FromKilogramsForce(1).Newtons / 1000.0;
    private static readonly double Lbf = Force.FromPoundsForce(1).Newtons;
    private static readonly double Ozf = Force.FromOunceForce(1).Newtons;
    private static readonly double In = Length.FromInches(1).Meters;
    private static readonly double Ft = Length.FromFeet(1).Meters;
    private static readonly double Lb = Mass.FromPounds(1).Kilograms;
    private static readonly double Oz = Mass.FromOunces(1).Kilograms;
    private static readonly double Rpm = RotationalSpeed.FromRevolutionsPerMinute(1).RadiansPerSecond;

    // number, what it is in SI by UnitsNet, and the ways to write its unit
    private static readonly (Dimension Dimension, double Number, double Si, string[] Units)[] Rows =
    [
        (Dimension.Ratio, 75, Ratio.FromPercent(75).DecimalFractions, [" %", "%", " percent"]),
        (Dimension.Ratio, 25, 25.0, [":1", "", " : 1"]),
        (Dimension.Length, 48, Length.FromMillimeters(48).Meters, ["mm", " mm", "-mm", " millimetres", " millimeters"]),
        (Dimension.Length, 4.8, Length.FromCentimeters(4.8).Meters, [" cm", "cm"]),
        (Dimension.Length, 1.5, Length.FromMeters(1.5).Meters, [" m", " metres", " meters"]),
        (Dimension.Length, 2.25, Length.FromInches(2.25).Meters, [" in", "in", " inch", " inches", "\"", "″", "”", "''"]),
        (Dimension.Length, 3, Length.FromFeet(3).Meters, [" ft", "ft", " feet", "'", "′"]),
        (Dimension.Length, 40, Length.FromMils(40).Meters, [" thou", " mil"]),
        (Dimension.Length, 300, Length.FromMicrometers(300).Meters, [" µm", " um", " μm"]),
        (Dimension.Mass, 1360, Mass.FromGrams(1360).Kilograms, [" g", "g", " grams"]),
        (Dimension.Mass, 1.36, Mass.FromKilograms(1.36).Kilograms, [" kg", "kg", " Kg"]),
        (Dimension.Mass, 3, Mass.FromPounds(3).Kilograms, [" lb", "lb", " lbs", " LB", " pounds"]),
        (Dimension.Mass, 48, Mass.FromOunces(48).Kilograms, [" oz", "oz", " ounces"]),
        (Dimension.Mass, 250, Mass.FromMilligrams(250).Kilograms, [" mg"]),
        (Dimension.Force, 5, Force.FromNewtons(5).Newtons, [" N", "N", " newtons"]),
        (Dimension.Force, 5, Force.FromMillinewtons(5).Newtons, [" mN"]),
        (Dimension.Force, 5, Force.FromKilonewtons(5).Newtons, [" kN"]),
        (Dimension.Force, 250, 250 * Gf, [" gf", "gf", " g-f"]),
        (Dimension.Force, 2, Force.FromKilogramsForce(2).Newtons, [" kgf", "kgf", " kp", " kg-f"]),
        (Dimension.Force, 4, Force.FromPoundsForce(4).Newtons, [" lbf", "lbf", " lb-f"]),
        (Dimension.Force, 30, Force.FromOunceForce(30).Newtons, [" ozf", "ozf"]),
        (Dimension.Torque, 0.4, Torque.FromNewtonMeters(0.4).NewtonMeters, [" N m", " Nm", "Nm", " N·m", " N-m", " N*m", " N⋅m", " N•m", " N.m"]),
        (Dimension.Torque, 70, Torque.FromNewtonMillimeters(70).NewtonMeters, [" mN m", " mNm", " mN·m", " mN-m", " N mm", " Nmm", " N·mm"]),
        (Dimension.Torque, 5, Torque.FromNewtonCentimeters(5).NewtonMeters, [" N cm", " Ncm", " N·cm", " N-cm"]),
        (Dimension.Torque, 900, 900e-6, [" uN m", " µNm", " μN·m"]),
        (Dimension.Torque, 1.2, 1200 * Gf * 0.01, [" kgf cm", " kgf·cm", " kgf-cm", " kgfcm", " kg cm", " kg·cm", " kg-cm", " kgcm", " kg*cm", " kg∙cm", " kgf.cm", " kg.cm", "kg.cm", " kg. cm"]),
        (Dimension.Torque, 151, 151 * Gf * 0.01, [" gf cm", " gf·cm", " g-cm", " g cm"]),
        (Dimension.Torque, 0.2, 200 * Gf, [" kgf m", " kg·m"]),
        (Dimension.Torque, 12, 12000 * Gf * 0.001, [" kgf mm", " kg-mm"]),
        (Dimension.Torque, 10, 10 * Ozf * In, [" oz-in", " oz in", " ozf in", " ozf-in", " oz·in", " in-oz", " ozin", " oz.in", " oz.-in"]),
        (Dimension.Torque, 2, 2 * Lbf * In, [" in-lb", " lb-in", " lbf in", " in lbf", " lbf·in", " in-lbs"]),
        (Dimension.Torque, 0.5, 0.5 * Lbf * Ft, [" ft-lb", " lb ft", " lbf·ft", " ft lbf", " ft-lbs", " ft.lbs"]),
        (Dimension.AngularSpeed, 600, RotationalSpeed.FromRevolutionsPerMinute(600).RadiansPerSecond, [" rpm", "rpm", " RPM", " Rpm", " 1/min", " r/min", " rev/min", " U/min", "/min"]),
        (Dimension.AngularSpeed, 62, RotationalSpeed.FromRadiansPerSecond(62).RadiansPerSecond, [" rad/s", "rad/s", " rad / s"]),
        (Dimension.AngularSpeed, 180, RotationalSpeed.FromDegreesPerSecond(180).RadiansPerSecond, [" deg/s", " °/s", "°/s", " dps"]),
        (Dimension.AngularSpeed, 5, RotationalSpeed.FromRevolutionsPerSecond(5).RadiansPerSecond, [" rev/s", " rps", " 1/s"]),
        (Dimension.SpeedConstant, 1400, 1400 * Rpm, [" rpm/V", " RPM/V", "rpm/V", " kv", " KV", "KV", " Kv", "Kv", " kV", " rpm/v", " 1/min/V", " 1/(min·V)", " rpm / V"]),
        (Dimension.SpeedConstant, 140, 140.0, [" rad/s/V", " rad/(s V)", " rad/(s·V)", " rad/(V s)"]),
        (Dimension.TorqueConstant, 7, 7e-3, [" mN m/A", " mNm/A", " mN·m/A", " mV s/rad", " mV·s/rad"]),
        (Dimension.TorqueConstant, 1.5, 1.5 * Ozf * In, [" oz-in/A", " ozf in/A", " in-oz/A"]),
        (Dimension.TorqueConstant, 0.3, 300 * Gf * 0.01, [" kgf cm/A", " kg·cm/A"]),
        (Dimension.TorqueConstant, 0.7, 0.7e-3 / Rpm, [" V/krpm", " mV/rpm"]),
        (Dimension.Voltage, 11.1, ElectricPotential.FromVolts(11.1).Volts, [" V", "V", "v", " volts", " VDC"]),
        (Dimension.Voltage, 400, ElectricPotential.FromMillivolts(400).Volts, [" mV"]),
        (Dimension.Current, 5, ElectricCurrent.FromAmperes(5).Amperes, [" A", "A", "a", " amps", " amp"]),
        (Dimension.Current, 120, ElectricCurrent.FromMilliamperes(120).Amperes, [" mA", "mA"]),
        (Dimension.Resistance, 3.2, ElectricResistance.FromOhms(3.2).Ohms, [" ohm", " Ohm", " ohms", " Ω", "Ω", " \u2126", "R"]),
        (Dimension.Resistance, 40, ElectricResistance.FromMilliohms(40).Ohms, [" mohm", " mOhm", " mΩ", "mΩ", " m\u2126", " milliohm", " mOhms"]),
        (Dimension.Resistance, 2, ElectricResistance.FromKiloohms(2).Ohms, [" kohm", " kΩ", " kOhm"]),
        (Dimension.Resistance, 2, ElectricResistance.FromMegaohms(2).Ohms, [" Mohm", " MΩ", " MOhm"]),
        (Dimension.Resistance, 900, ElectricResistance.FromMicroohms(900).Ohms, [" uohm", " µΩ"]),
        (Dimension.Inductance, 1.1, ElectricInductance.FromMillihenries(1.1).Henries, [" mH"]),
        (Dimension.Inductance, 200, ElectricInductance.FromMicrohenries(200).Henries, [" uH", " µH"]),
        (Dimension.Charge, 450, ElectricCharge.FromMilliampereHours(450).Coulombs, [" mAh", "mAh", " mA h", " mA·h", " mAH", " mah"]),
        (Dimension.Charge, 0.45, ElectricCharge.FromAmpereHours(0.45).Coulombs, [" Ah", " A h", " A·h", " AH"]),
        (Dimension.Charge, 1620, ElectricCharge.FromCoulombs(1620).Coulombs, [" C", " A s", " As"]),
        (Dimension.Angle, 90, Angle.FromDegrees(90).Radians, [" deg", "deg", "°", " °", "º", " degrees"]),
        (Dimension.Angle, 0.2, Angle.FromRadians(0.2).Radians, [" rad"]),
        (Dimension.Angle, 5, Angle.FromMilliradians(5).Radians, [" mrad"]),
        (Dimension.Angle, 3, Angle.FromArcminutes(3).Radians, [" arcmin"]),
        (Dimension.Temperature, 20, Temperature.FromDegreesCelsius(20).DegreesCelsius, [" °C", "°C", " C", "C", " degC", " deg C", " º C", " celsius"]),
        (Dimension.Temperature, 68, Temperature.FromDegreesFahrenheit(68).DegreesCelsius, [" °F", " F", "F", " degF"]),
        (Dimension.Temperature, 300, Temperature.FromKelvins(300).DegreesCelsius, [" K", " kelvin"]),
        (Dimension.Speed, 2.5, Speed.FromMetersPerSecond(2.5).MetersPerSecond, [" m/s", "m/s", " m / s", " m/sec"]),
        (Dimension.Speed, 9, Speed.FromKilometersPerHour(9).MetersPerSecond, [" km/h", " kmh", " kph", " kmph"]),
        (Dimension.Speed, 6, Speed.FromMilesPerHour(6).MetersPerSecond, [" mph", "mph", " MPH"]),
        (Dimension.Speed, 8, Speed.FromFeetPerSecond(8).MetersPerSecond, [" ft/s", " fps"]),
        (Dimension.Speed, 80, Speed.FromInchesPerSecond(80).MetersPerSecond, [" in/s", " ips"]),
        (Dimension.Speed, 250, Speed.FromCentimetersPerSecond(250).MetersPerSecond, [" cm/s", "cm/s"]),
        (Dimension.Speed, 80, Speed.FromMillimetersPerSecond(80).MetersPerSecond, [" mm/s", "mm/s"]),
        (Dimension.Time, 80, Duration.FromMilliseconds(80).Seconds, [" ms", "ms", " msec"]),
        (Dimension.Time, 3, Duration.FromSeconds(3).Seconds, [" s", "s", " sec", " seconds"]),
        (Dimension.Time, 2, Duration.FromMinutes(2).Seconds, [" min"]),
        (Dimension.Stiffness, 9, ForcePerLength.FromNewtonsPerMillimeter(9).NewtonsPerMeter, [" N/mm", "N/mm", " kN/m"]),
        (Dimension.Stiffness, 90, ForcePerLength.FromNewtonsPerCentimeter(90).NewtonsPerMeter, [" N/cm"]),
        (Dimension.Stiffness, 2500, ForcePerLength.FromNewtonsPerMeter(2500).NewtonsPerMeter, [" N/m"]),
        (Dimension.Stiffness, 12, 12 * Lbf / In, [" lbf/in", " lb/in"]),
        (Dimension.Stiffness, 300, 300 * Gf / 1e-3, [" gf/mm", " g/mm"]),
        (Dimension.Damping, 2, 2.0, [" N s/m", " N·s/m", " Ns/m", " N/(m/s)"]),
        (Dimension.RotaryDamping, 2, 2e-6, [" uN m s/rad", " µN·m·s/rad", " uNms", " uN.m.s/rad", " uN.m s/rad"]),
        (Dimension.RotaryDamping, 3, 3e-3 / Rpm, [" mN m/rpm"]),
        (Dimension.Inertia, 3, MassMomentOfInertia.FromGramSquareCentimeters(3).KilogramSquareMeters, [" g cm2", " g·cm²", " gcm2", " g cm^2", " g-cm2", " g*cm²", " g.cm²"]),
        (Dimension.Inertia, 60, MassMomentOfInertia.FromKilogramSquareCentimeters(60).KilogramSquareMeters, [" kg cm2", " kg·cm²", " kg-cm^2"]),
        (Dimension.Inertia, 0.01, MassMomentOfInertia.FromKilogramSquareMeters(0.01).KilogramSquareMeters, [" kg m2", " kg·m²", " kgm2"]),
        (Dimension.Inertia, 250, MassMomentOfInertia.FromGramSquareMillimeters(250).KilogramSquareMeters, [" g mm2", " g·mm²"]),
        (Dimension.Inertia, 250, MassMomentOfInertia.FromKilogramSquareMillimeters(250).KilogramSquareMeters, [" kg mm2"]),
        (Dimension.Inertia, 0.5, 0.5 * Oz * In * In, [" oz in2", " oz-in²"]),
        (Dimension.Inertia, 0.5, 0.5 * Lb * In * In, [" lb in2", " lb·in²"]),
        (Dimension.ThermalResistance, 8, 8.0, [" K/W", " °C/W", " C/W", "K/W"]),
        (Dimension.HeatCapacity, 30, 30.0, [" J/K", " J/°C", " Ws/K"]),
        (Dimension.Frequency, 1.2, Frequency.FromKilohertz(1.2).Hertz, [" kHz", "kHz"]),
        (Dimension.Frequency, 80, Frequency.FromHertz(80).Hertz, [" Hz", " 1/s", " SPS"]),
        (Dimension.Rate, 1200, 12.0, [" %/s"]),
        (Dimension.Volume, 150, Volume.FromCubicMillimeters(150).CubicMeters, [" mm3", " mm³", " mm^3"]),
        (Dimension.Volume, 2, Volume.FromCubicCentimeters(2).CubicMeters, [" cm3", " cm³", " cc", " ml"]),
        (Dimension.InverseLength, 1, ReciprocalLength.FromInverseCentimeters(1).InverseMeters, [" 1/cm", "/cm"]),
        (Dimension.InverseSpeed, 0.05, 0.05, [" s/m"]),
        (Dimension.Pressure, 0.4, Pressure.FromMegapascals(0.4).Pascals, [" MPa", " N/mm2", " N/mm²", " N/mm^2"]),
        (Dimension.Pressure, 400, Pressure.FromKilopascals(400).Pascals, [" kPa"]),
        (Dimension.Pressure, 30, Pressure.FromPoundsForcePerSquareInch(30).Pascals, [" psi", " lbf/in2"]),
        (Dimension.Pressure, 2, Pressure.FromBars(2).Pascals, [" bar"]),
        (Dimension.InverseAngle, 2, 2, [" 1/rad", " /rad"]),
        (Dimension.InverseAngle, 0.05, 0.05 / Angle.FromDegrees(1).Radians, [" 1/deg", " /deg", " 1/°"]),
        (Dimension.Density, 0.25, Density.FromGramsPerCubicCentimeter(0.25).KilogramsPerCubicMeter, [" g/cm3", " g/cm³", " g/cc"]),
        (Dimension.Density, 250, 250, [" kg/m3"]),
    ];

    public static TheoryData<object, string> Texts
    {
        get
        {
            TheoryData<object, string> texts = [];
            foreach ((Dimension dimension, double number, _, string[] units) in Rows)
            {
                texts.AddRange([.. units.Select(u => new TheoryDataRow<object, string>(dimension, FormattableString.Invariant($"{number}{u}")))]);
            }

            return texts;
        }
    }

    [Fact]
    public void There_are_two_hundred_texts_of_every_dimension()
    {
        (Dimension, string)[] texts = [.. Texts.Select(t => ((Dimension)t.Data.Item1, t.Data.Item2))];
        Assert.Equal(texts.Length, texts.Distinct().Count());
        Assert.InRange(texts.Length, 200, int.MaxValue);
        Assert.Equal(Enum.GetValues<Dimension>(), texts.Select(t => t.Item1).Distinct().Order());
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_text_converts_as_the_units_package_has_it(object dimension, string text)
    {
        Assert.True(Quantity.TryParse(text, (Dimension)dimension, out Quantity q, out string message, out string help), $"{message}; {help}");
        double si = Rows.Single(r => r.Dimension == (Dimension)dimension && r.Units.Any(u => FormattableString.Invariant($"{r.Number}{u}") == text)).Si;
        Assert.True(Math.Abs(q.Value - si) <= Relative * Math.Max(Math.Abs(si), (Dimension)dimension == Dimension.Temperature ? 300.0 : 0.0), FormattableString.Invariant($"{text}: expected {si:R}, got {q.Value:R}"));
    }

    // letters whose case makes a factor of a million, or another quantity
    [Theory]
    [InlineData(Dimension.Resistance, "40 mΩ", "40 MΩ", 1e9)]
    [InlineData(Dimension.Resistance, "40 mohm", "40 Mohm", 1e9)]
    public void Milli_is_not_mega(object dimension, string small, string large, double factor)
    {
        Assert.True(Quantity.TryParse(small, (Dimension)dimension, out Quantity s, out _, out _));
        Assert.True(Quantity.TryParse(large, (Dimension)dimension, out Quantity l, out _, out _));
        Assert.Equal(factor, l.Value / s.Value, 1e-3);
    }

    [Theory]
    [InlineData(Dimension.Charge, "450 MAh")]
    [InlineData(Dimension.Charge, "450 MAH")]
    [InlineData(Dimension.Torque, "4 MNm")]
    [InlineData(Dimension.Torque, "4 nm")]
    [InlineData(Dimension.Torque, "4 NM")]
    [InlineData(Dimension.Length, "4 Mm")]
    [InlineData(Dimension.Length, "4 M")]
    [InlineData(Dimension.Mass, "4 G")]
    [InlineData(Dimension.Temperature, "4 k")]
    [InlineData(Dimension.Time, "4 S")]
    [InlineData(Dimension.Force, "4 n")]
    [InlineData(Dimension.Force, "4 kg")]
    [InlineData(Dimension.Current, "4 MA")]
    [InlineData(Dimension.Voltage, "4 MV")]
    [InlineData(Dimension.Length, "4 m.m")]
    [InlineData(Dimension.AngularSpeed, "4 r.p.m")]
    [InlineData(Dimension.Torque, "4 .kgf cm")]
    [InlineData(Dimension.Torque, "4 kgf..cm")]
    [InlineData(Dimension.Torque, "4 kgf cm.")]
    [InlineData(Dimension.Torque, "1.400.5 kgf cm")]
    [InlineData(Dimension.Torque, "4 kg.f.cm")]
    public void Letters_that_could_be_mistaken_are_refused(object dimension, string text) => Assert.False(Quantity.TryParse(text, (Dimension)dimension, out _, out _, out _));

    [Fact]
    public void No_spelling_stands_twice() =>
        Assert.All(Enum.GetValues<Dimension>(), d =>
        {
            string[] spellings = [.. UnitTable.Spellings(d).Select(UnitTable.Normalise)];
            Assert.Equal(spellings, spellings.Distinct());
        });

    // every spelling of the table also behind a number, and in the pattern of the schemas
    [Fact]
    public void Every_spelling_of_the_table_is_read_and_matched() =>
        Assert.All(Enum.GetValues<Dimension>(), d => Assert.All(UnitTable.Spellings(d), s =>
        {
            Assert.True(Quantity.TryParse("1 " + s, d, out _, out _, out _), s);
            Assert.Matches(UnitPattern.Of(d), "1 " + s);
        }));
}
