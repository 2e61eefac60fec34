using System.Globalization;
using PushSim.Scenarios.Units;
using Xunit;

namespace PushSim.Scenarios.Tests;

public class QuantityTests
{
    [Theory]
    [InlineData("0.85 ± 0.05", "0.85", "±", "0.05")]
    [InlineData("350 g +/- 2 %", "350 g", "±", "2 %")]
    [InlineData("-3 mm +- 1 mm", "-3 mm", "±", "1 mm")]
    [InlineData("0.005 x/ 5", "0.005", "x/", "5")]
    [InlineData("0.005 ×/ 5", "0.005", "x/", "5")]
    [InlineData("1360 g exact", "1360 g exact", "", "")]
    public void A_text_is_cut_at_its_tolerance(string text, string value, string mark, string tolerance) => Assert.Equal((value, mark, tolerance), Quantity.Cut(text));

    // Expected values computed here from 1 in = 0.0254 m, 1 lb = 0.45359237 kg, g = 9.80665 m/s^2 (exact by definition) and SI prefixes.
    [Theory]
    [InlineData("1.5 m", Dimension.Length, 1.5)]
    [InlineData("48 mm", Dimension.Length, 0.048)]
    [InlineData("48mm", Dimension.Length, 0.048)]
    [InlineData("4.8 cm", Dimension.Length, 0.048)]
    [InlineData("2 in", Dimension.Length, 0.0508)]
    [InlineData("2\"", Dimension.Length, 0.0508)]
    [InlineData("300 µm", Dimension.Length, 3e-4)]
    [InlineData("-3 mm", Dimension.Length, -0.003)]
    [InlineData("\u22123 mm", Dimension.Length, -0.003)]
    [InlineData("1360 g", Dimension.Mass, 1.36)]
    [InlineData("1.36 kg", Dimension.Mass, 1.36)]
    [InlineData("3 lb", Dimension.Mass, 1.36077711)]
    [InlineData("16 oz", Dimension.Mass, 0.45359237)]
    [InlineData("5 N", Dimension.Force, 5.0)]
    [InlineData("250 gf", Dimension.Force, 2.4516625)]
    [InlineData("2 kgf", Dimension.Force, 19.6133)]
    [InlineData("1 lbf", Dimension.Force, 4.4482216152605)]
    [InlineData("0.4 N m", Dimension.Torque, 0.4)]
    [InlineData("0.4 Nm", Dimension.Torque, 0.4)]
    [InlineData("0.4 N·m", Dimension.Torque, 0.4)]
    [InlineData("7 mN m", Dimension.Torque, 0.007)]
    [InlineData("7 mNm", Dimension.Torque, 0.007)]
    [InlineData("5 N cm", Dimension.Torque, 0.05)]
    [InlineData("1.2 kgf·cm", Dimension.Torque, 0.11767980)]
    [InlineData("1.2 kg·cm", Dimension.Torque, 0.11767980)]
    [InlineData("1.2 kg-cm", Dimension.Torque, 0.11767980)]
    [InlineData("151 gf.cm", Dimension.Torque, 0.0148080415)]
    [InlineData("151 gf cm", Dimension.Torque, 0.0148080415)]
    [InlineData("10 oz-in", Dimension.Torque, 0.0706155181422604)]
    [InlineData("1 lb in", Dimension.Torque, 0.112984829027617)]
    [InlineData("600 rpm", Dimension.AngularSpeed, 62.8318530717959)]
    [InlineData("600 1/min", Dimension.AngularSpeed, 62.8318530717959)]
    [InlineData("62 rad/s", Dimension.AngularSpeed, 62.0)]
    [InlineData("180 deg/s", Dimension.AngularSpeed, 3.14159265358979)]
    [InlineData("1000 rpm/V", Dimension.SpeedConstant, 104.719755119660)]
    [InlineData("140 rad/s/V", Dimension.SpeedConstant, 140.0)]
    [InlineData("140 rad/(s·V)", Dimension.SpeedConstant, 140.0)]
    [InlineData("7 mN m/A", Dimension.TorqueConstant, 0.007)]
    [InlineData("7 mV s/rad", Dimension.TorqueConstant, 0.007)]
    [InlineData("11.1 V", Dimension.Voltage, 11.1)]
    [InlineData("400 mV", Dimension.Voltage, 0.4)]
    [InlineData("5 A", Dimension.Current, 5.0)]
    [InlineData("120 mA", Dimension.Current, 0.12)]
    [InlineData("3.2 ohm", Dimension.Resistance, 3.2)]
    [InlineData("3.2 Ω", Dimension.Resistance, 3.2)]
    [InlineData("40 mOhm", Dimension.Resistance, 0.04)]
    [InlineData("40 mΩ", Dimension.Resistance, 0.04)]
    [InlineData("450 mAh", Dimension.Charge, 1620.0)]
    [InlineData("0.45 A h", Dimension.Charge, 1620.0)]
    [InlineData("75 %", Dimension.Ratio, 0.75)]
    [InlineData("0.75", Dimension.Ratio, 0.75)]
    [InlineData("25:1", Dimension.Ratio, 25.0)]
    [InlineData("90 deg", Dimension.Angle, 1.5707963267949)]
    [InlineData("90°", Dimension.Angle, 1.5707963267949)]
    [InlineData("0.2 rad", Dimension.Angle, 0.2)]
    [InlineData("20 °C", Dimension.Temperature, 20.0)]
    [InlineData("293.15 K", Dimension.Temperature, 20.0)]
    [InlineData("68 °F", Dimension.Temperature, 20.0)]
    [InlineData("2.5 m/s", Dimension.Speed, 2.5)]
    [InlineData("9 km/h", Dimension.Speed, 2.5)]
    [InlineData("80 ms", Dimension.Time, 0.08)]
    [InlineData("3 s", Dimension.Time, 3.0)]
    [InlineData("2500 N/m", Dimension.Stiffness, 2500.0)]
    [InlineData("9 N/mm", Dimension.Stiffness, 9000.0)]
    [InlineData("9 kN/m", Dimension.Stiffness, 9000.0)]
    [InlineData("2 N s/m", Dimension.Damping, 2.0)]
    [InlineData("2 N·s/m", Dimension.Damping, 2.0)]
    [InlineData("0.4 MPa", Dimension.Pressure, 4e5)]
    [InlineData("0.4 N/mm²", Dimension.Pressure, 4e5)]
    [InlineData("100 psi", Dimension.Pressure, 689475.729316836)]
    [InlineData("0.25 g/cm³", Dimension.Density, 250.0)]
    [InlineData("15 lb/ft3", Dimension.Density, 240.276950609402)]
    [InlineData("60 kg cm2", Dimension.Inertia, 0.006)]
    [InlineData("3 g cm2", Dimension.Inertia, 3e-7)]
    [InlineData("3 g·cm²", Dimension.Inertia, 3e-7)]
    [InlineData("3 g cm^2", Dimension.Inertia, 3e-7)]
    [InlineData("8 K/W", Dimension.ThermalResistance, 8.0)]
    [InlineData("30 J/K", Dimension.HeatCapacity, 30.0)]
    [InlineData("80 Hz", Dimension.Frequency, 80.0)]
    [InlineData("1 kHz", Dimension.Frequency, 1000.0)]
    [InlineData("150 mm3", Dimension.Volume, 1.5e-7)]
    [InlineData("150 mm³", Dimension.Volume, 1.5e-7)]
    [InlineData("100 1/m", Dimension.InverseLength, 100.0)]
    [InlineData("0.05 s/m", Dimension.InverseSpeed, 0.05)]
    [InlineData("1e-7 kg m2", Dimension.Inertia, 1e-7)]
    [InlineData("1.1 mH", Dimension.Inductance, 1.1e-3)]
    [InlineData("2 uN m", Dimension.Torque, 2e-6)]
    [InlineData("1200 %/s", Dimension.Rate, 12.0)]
    [InlineData("1 mN m s/rad", Dimension.RotaryDamping, 1e-3)]
    public void Units_convert(string text, object dimension, double expected)
    {
        bool isRead = Quantity.TryParse(text, (Dimension)dimension, out Quantity q, out string message, out _);
        if (double.IsNaN(expected))
        {
            Assert.False(isRead);
            return;
        }

        Assert.True(isRead, message);
        Assert.True(Math.Abs(q.Value - expected) <= 1e-12 * Math.Max(1.0, Math.Abs(expected)), FormattableString.Invariant($"{text}: expected {expected:R}, got {q.Value:R} {UnitTable.SiName((Dimension)dimension)}"));
        Assert.Equal(0.0, q.Tolerance);
    }

    [Theory]
    [InlineData("0.85 ± 0.05", Dimension.Ratio, 0.85, 0.05)]
    [InlineData("0.85±0.05", Dimension.Ratio, 0.85, 0.05)]
    [InlineData("0.85 +/- 0.05", Dimension.Ratio, 0.85, 0.05)]
    [InlineData("0.85 +- 0.05", Dimension.Ratio, 0.85, 0.05)]
    [InlineData("0.8 ± 10 %", Dimension.Ratio, 0.8, 0.08)]
    [InlineData("70 % ± 5 %", Dimension.Ratio, 0.7, 0.05)]
    [InlineData("350 g ± 2 %", Dimension.Mass, 0.35, 0.007)]
    [InlineData("350 g ± 7 g", Dimension.Mass, 0.35, 0.007)]
    [InlineData("350 ± 7 g", Dimension.Mass, 0.35, 0.007)]
    [InlineData("350 g ± 7", Dimension.Mass, 0.35, 0.007)]
    [InlineData("1.36 kg +/- 10 g", Dimension.Mass, 1.36, 0.01)]
    [InlineData("-5 mm ± 10 %", Dimension.Length, -0.005, 0.0005)]
    [InlineData("20 °C ± 5 K", Dimension.Temperature, 20.0, 5.0)]
    public void Tolerances_are_kept_beside_the_middle(string text, object dimension, double middle, double half)
    {
        Assert.True(Quantity.TryParse(text, (Dimension)dimension, out Quantity q, out string message, out _), message);
        Assert.Equal(middle, q.Value, 1e-13);
        Assert.Equal(half, q.Tolerance, 1e-13);
    }

    [Theory]
    [InlineData("48", Dimension.Length, "the unit is missing", "mm")]
    [InlineData("48 g", Dimension.Length, "\"g\" measures mass, but this is a length", "mm")]
    [InlineData("48 m", Dimension.Mass, "\"m\" measures length, but this is a mass", "kg, g")]
    [InlineData("48 mmm", Dimension.Length, "\"mmm\" is no unit", "did you mean \"mm\"")]
    [InlineData("48 fathom", Dimension.Length, "\"fathom\" is no unit", "m, mm")]
    [InlineData("1,5 mm", Dimension.Length, "a comma in a number", "point")]
    [InlineData("1,500 mm", Dimension.Length, "a comma in a number", "point")]
    [InlineData("nan mm", Dimension.Length, "does not start with a number", "")]
    [InlineData("inf mm", Dimension.Length, "does not start with a number", "")]
    [InlineData("1e999 mm", Dimension.Length, "not finite", "")]
    [InlineData("", Dimension.Length, "does not start with a number", "mm")]
    [InlineData("mm", Dimension.Length, "does not start with a number", "mm")]
    [InlineData("5 mm ± -1 mm", Dimension.Length, "cannot be negative", "")]
    [InlineData("5 mm ± 1 g", Dimension.Length, "\"g\" measures mass", "mm")]
    [InlineData("5 mm ±", Dimension.Length, "does not start with a number", "")]
    [InlineData("5 mm ± 1 mm uniform normal", Dimension.Length, "\"mm uniform\" is no unit known here", "mm")]
    [InlineData("0x10 mm", Dimension.Length, "is no unit", "mm")]
    [InlineData("5 MM", Dimension.Length, "is no unit", "did you mean \"mm\"")]
    [InlineData("0.85 N", Dimension.Ratio, "\"N\" measures force, but this is a pure number", "%")]
    public void Wrong_texts_say_what_is_wrong_and_what_is_right(string text, object dimension, string message, string help)
    {
        Assert.False(Quantity.TryParse(text, (Dimension)dimension, out _, out string said, out string advice));
        Assert.Contains(message, said);
        Assert.Contains(help, advice);
    }

    // Counted by hand.
    [Theory]
    [InlineData("600 rpm", Dimension.AngularSpeed, 0.104719755119660)]
    [InlineData("600.0 rpm", Dimension.AngularSpeed, 0.0104719755119660)]
    [InlineData("3.80 A", Dimension.Current, 0.01)]
    [InlineData("1.2e3 mA", Dimension.Current, 0.1)]
    [InlineData("-0.05 N", Dimension.Force, 0.01)]
    [InlineData("75 %", Dimension.Ratio, 0.01)]
    [InlineData("4.2 kgf cm ± 10 %", Dimension.Torque, 0.00980665)]
    [InlineData("450 g exact", Dimension.Mass, 0.001)]
    public void The_last_digit_of_a_text_is_known(string text, object dimension, double digit)
    {
        Assert.True(Quantity.TryParse(text, (Dimension)dimension, out Quantity q, out _, out _));
        Assert.Equal(digit, q.LastDigit, 1e-12 * digit);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("fr-FR")]
    [InlineData("tr-TR")]
    [InlineData("")]
    public void Numbers_read_the_same_in_every_country(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.True(Quantity.TryParse("1.5 mm ± 0.25 mm", Dimension.Length, out Quantity q, out _, out _));
            Assert.Equal(0.0015, q.Value, 1e-15);
            Assert.Equal(0.00025, q.Tolerance, 1e-15);
            Assert.False(Quantity.TryParse("1,5 mm", Dimension.Length, out _, out _, out _));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
