using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Tyres;

public class CoverContactTests
{
    // Whole wheels, computed here by an independent solution of the integral equation with the bonded layer's kernel; the table is good to 1 %.
    // a [mm], delta [mm], k [N/m]
    [Theory]
    [InlineData(0.020, 0.005, 0.015, 3.605073e6, 0.5, 2.0, 0.829, 0.03569, 73490.0)]
    [InlineData(0.020, 0.005, 0.015, 3.605073e6, 0.5, 10.0, 1.771, 0.1137, 130500.0)]
    [InlineData(0.020, 0.005, 0.015, 13.182e6, 0.5, 2.0, 0.438, 0.01282, 191700.0)]
    [InlineData(0.025, 0.010, 0.020, 0.4e6, 0.0, 2.0, 2.763, 0.3371, 7620.0)]
    public void A_covered_wheel(double radius, double thickness, double width, double modulus, double poisson, double load, double half, double squash, double stiffness)
    {
        CoverContact c = Solved(load, radius, thickness, width, modulus, poisson);
        Close(half, 1e3 * c.HalfLength, 0.005, "mm");
        Close(squash, 1e3 * c.Squash, 0.005, "mm");
        Close(stiffness, c.NormalStiffness, 0.005, "N/m");
    }

    // the load of a pressure is the load that has it: far below the table, in it, at its end and, for more than it reaches, that of its end
    [Theory]
    [InlineData(0.025, 0.010, 0.020, 0.4e6, 0.0)]
    [InlineData(0.020, 0.005, 0.015, 3.605073e6, 0.5)]
    public void A_pressure_gives_its_load(double radius, double thickness, double width, double modulus, double poisson)
    {
        double Back(double load) => CoverContact.LoadAt(Solved(load, radius, thickness, width, modulus, poisson).MeanPressure, radius, thickness, width, modulus, poisson);
        Assert.All(new[] { 1e-4, 0.5, 2.0, 7.0 }, load => Close(load, Back(load), 1e-9, "N"));
        double most = CoverContact.LoadAt(1e9, radius, thickness, width, modulus, poisson);
        Assert.Null(CoverContact.Solve(1.001 * most, radius, thickness, width, modulus, poisson));
        Close(0.999 * most, Back(0.999 * most), 1e-9, "N");
    }

    // the first of these: stuck, 35 420 N/m; mean pressure 80 kPa (computed here)
    [Fact]
    public void Its_tangential_stiffness_and_pressure()
    {
        CoverContact c = Solved(2.0, 0.020, 0.005, 0.015, 3.605073e6, 0.5);
        Close(35420.0, c.TangentialStiffness, 0.005, "N/m");
        Assert.Equal(80e3, c.MeanPressure, 0.5e3);
    }

    // k = pi E* w/(2 (ln(h/a) + c - 1/2)) within 4 % for a/h up to 0.2: Johnson, Contact Mechanics, ch. 5 (from memory); c computed here
    [Theory]
    [InlineData(0.0, 0.8209, 0.02)]
    [InlineData(0.0, 0.8209, 0.2)]
    [InlineData(0.3, 0.6667, 0.1)]
    [InlineData(0.3, 0.6667, 0.2)]
    [InlineData(0.45, 0.3874, 0.2)]
    [InlineData(0.5, 0.2169, 0.05)]
    [InlineData(0.5, 0.2169, 0.2)]
    public void A_thick_cover_has_the_logarithmic_stiffness(double poisson, double c, double ratio)
    {
        const double R = 0.03, H = 0.008, W = 0.02, E = 1e6;
        double plane = E / (1.0 - (poisson * poisson));
        double load = W * Math.PI * plane * ratio * ratio * H * H / (4.0 * R);
        CoverContact found = Solved(load, R, H, W, E, poisson);
        double expected = Math.PI * plane * W / (2.0 * (Math.Log(H / found.HalfLength) + c - 0.5));
        Close(expected, found.NormalStiffness, 0.04, "N/m");
    }

    // a metal-like cover: the contact is far below the table, where the load is pi E* a^2 w/(4 R)
    [Fact]
    public void Below_the_table_the_contact_is_that_of_a_thick_cover()
    {
        CoverContact c = Solved(1.0, 0.03, 0.01, 0.02, 3e9, 0.3);
        double plane = 3e9 / (1.0 - 0.09);
        Close(Math.Sqrt(4.0 * 0.03 / (Math.PI * plane * 0.02)), c.HalfLength, 1e-9, "m");
        Assert.True(c.HalfLength < 1e-4);
    }

    [Fact]
    public void A_cover_pressed_flat_has_no_solution() =>
        Assert.Null(CoverContact.Solve(50.0, 0.03, 0.001, 0.01, 1e5, 0.0));

    /// <summary>Contact of a covered wheel on the floor, SI.</summary>
    internal static CoverContact Solved(double load, double radius, double thickness, double width, double modulus, double poisson) =>
        Assert.IsType<CoverContact>(CoverContact.Solve(load, radius, thickness, width, modulus, poisson));

    private static void Close(double expected, double actual, double relative, string unit) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), FormattableString.Invariant($"expected {expected:R} {unit}, got {actual:R}, ratio {actual / expected:F5}"));
}
