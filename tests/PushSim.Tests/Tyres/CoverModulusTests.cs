using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Tyres;

public class CoverModulusTests
{
    // Gent, Rubber Chem. Technol. 31:896, 1958 (from memory); numbers computed here
    [Theory]
    [InlineData(30, 1.142372)]
    [InlineData(40, 1.689639)]
    [InlineData(50, 2.455812)]
    [InlineData(60, 3.605073)]
    [InlineData(70, 5.520507)]
    [InlineData(80, 9.351375)]
    [InlineData(85, 13.182243)]
    public void Modulus_from_hardness(double shore, double megapascal) => Assert.Equal(megapascal, 1e-6 * CoverModulus.FromShoreA(shore), 5.1e-7);

    // Natural rubber, Lindley, Engineering Design with Natural Rubber (from memory): inside the factor of 2 that is promised
    [Theory]
    [InlineData(30, 0.92)]
    [InlineData(40, 1.50)]
    [InlineData(50, 2.20)]
    [InlineData(60, 4.45)]
    [InlineData(70, 7.35)]
    public void Modulus_from_hardness_is_within_a_factor_of_two_of_a_handbook(double shore, double megapascal) =>
        Assert.InRange(1e-6 * CoverModulus.FromShoreA(shore) / megapascal, 0.5, 2.0);

    // Gibson and Ashby, Cellular Solids (from memory); numbers computed here; without gas at nu = 0.5
    [Theory]
    [InlineData(0.1, 0.0100, 0.0264)]
    [InlineData(0.2, 0.0400, 0.0656)]
    public void Foam_modulus(double r, double open, double closed)
    {
        Assert.Equal(open, CoverModulus.OfOpenFoam(1.0, r), 1e-12);
        Assert.Equal(closed, CoverModulus.OfClosedFoam(1.0, r, 0.5), 1e-12);
        Assert.Equal(closed + (101325.0 / (1.0 - r)), CoverModulus.OfClosedFoam(1.0, r, 0.0), 1e-9);
    }

    // Foamed polyurethane sheet, stress at 10 % by its maker (shincellfoam.com, microcellular sheet); the solid's 80 A is an assumption
    [Theory]
    [InlineData(120, 0.031)]
    [InlineData(150, 0.040)]
    [InlineData(170, 0.046)]
    [InlineData(190, 0.080)]
    public void A_makers_foam_is_within_a_factor_of_two(double density, double stressAtTenPercent)
    {
        double e = CoverModulus.OfClosedFoam(CoverModulus.FromShoreA(80), density / 1200.0, 0.0);
        Assert.InRange(1e-6 * e * 0.1 / stressAtTenPercent, 0.5, 2.0);
    }

    // Gent, Engineering with Rubber (from memory): R = exp(-pi tan d); numbers computed here. 1.25 of it: held values, of which only the mean is known here, lay 20 % above
    [Theory]
    [InlineData(0.854636, 0.05)]
    [InlineData(0.730403, 0.1)]
    [InlineData(0.533488, 0.2)]
    [InlineData(0.207880, 0.5)]
    [InlineData(0.7, 0.11353)]
    [InlineData(0.45, 0.25417)]
    public void Loss_factor_from_rebound(double rebound, double lossFactor) => Assert.Equal(1.25 * lossFactor, CoverModulus.LossFactor(rebound), 6e-6);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.45)]
    [InlineData(0.86)]
    public void A_rebound_comes_back_from_its_loss_factor(double rebound) => Assert.Equal(rebound, CoverModulus.Rebound(CoverModulus.LossFactor(rebound)), 1e-12);
}
