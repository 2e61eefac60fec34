using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Numerics;

public sealed class PlainNumberTests
{
    // computed here
    // a double's shortest text that reads back to the bit, written out
    [Theory]
    [InlineData(3.29e-06, "0.00000329")]
    [InlineData(0.1, "0.1")]
    [InlineData(-12345678.25, "-12345678.25")]
    [InlineData(123456789.12345679, "123456789.12345679")]
    [InlineData(1e-7, "1E-07")]
    [InlineData(0.0, "0")]
    public void All_digits_without_a_power_of_ten(double value, string expected)
    {
        Assert.Equal(expected, PlainNumber.Exact(value));
        Assert.Equal(value, double.Parse(PlainNumber.Exact(value), System.Globalization.CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData(12345.0, 3, "12300")]
    [InlineData(120_000.0, 2, "120000")]
    [InlineData(0.000123456, 3, "0.000123")]
    [InlineData(-2.5e-5, 3, "-0.000025")]
    [InlineData(0.0, 3, "0")]
    [InlineData(9.9996, 4, "10")]
    [InlineData(1.2345e9, 3, "1.23E+09")]
    [InlineData(1.2345e-7, 3, "1.23E-07")]
    [InlineData(double.NaN, 3, "NaN")]
    public void A_few_digits_without_a_power_of_ten(double value, int digits, string text) => Assert.Equal(text, PlainNumber.Of(value, digits));

    // computed here
    [Theory]
    [InlineData(9.4, 9.6, "9.4")]
    [InlineData(9.581, 9.6, "9.58")]
    [InlineData(9.5999, 9.6, "9.5999")]
    [InlineData(9.6, 9.6, "9.600000")]
    public void As_many_decimals_as_tell_two_numbers_apart(double value, double other, string text) => Assert.Equal(text, PlainNumber.Apart(value, other));
}
