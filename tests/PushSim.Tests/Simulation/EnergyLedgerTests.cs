using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>The ledger's ratio where next to nothing flows, which is rounding, and where something does.</summary>
public class EnergyLedgerTests
{
    // Rounding of a robot at rest grows with its mass: of 500 kg it must not look like energy out of nowhere. Computed here.
    [Theory]
    [InlineData(0.05, 1e-10, 0.1)]
    [InlineData(1.0, 1e-10, 0.1)]
    [InlineData(20.0, 2e-9, 0.1)]
    [InlineData(500.0, 5e-8, 0.1)]
    [InlineData(500.0, 1e-10, 2e-4)]
    public void Rounding_of_a_robot_at_rest_is_small_against_what_its_mass_could_hold(double mass, double outOfNowhere, double ratio) =>
        Assert.Equal(ratio, Of(mass, outOfNowhere).ResidualRatio, 1e-12);

    [Theory]
    [InlineData(0.05)]
    [InlineData(500.0)]
    public void Energy_out_of_nowhere_is_never_hidden_by_the_mass(double mass) => Assert.Equal(1.0, Of(mass, 1e-6).ResidualRatio, 1e-12);

    private static EnergyLedger Of(double mass, double kinetic) =>
        EnergyLedger.Of(new double[3], contact: null, mass, new StoredEnergy(0.0, 0.0, 0.0), new StoredEnergy(kinetic, 0.0, 0.0));
}
