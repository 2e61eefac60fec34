using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>The ledger's ratio where next to nothing flows, which is rounding, and where something does.</summary>
public class EnergyLedgerTests
{
    // Rounding of a robot at rest grows with its mass: of 500 kg it must not look like energy out of nowhere, and a share of nothing is none. Computed here.
    [Theory]
    [InlineData(0.05, 1e-10)]
    [InlineData(1.0, 1e-10)]
    [InlineData(20.0, 2e-9)]
    [InlineData(500.0, 5e-8)]
    [InlineData(500.0, 1e-10)]
    public void Of_a_robot_at_rest_nothing_is_open(double mass, double outOfNowhere) => Assert.Equal(0.0, Of(mass, outOfNowhere).ResidualRatio);

    [Theory]
    [InlineData(0.05)]
    [InlineData(500.0)]
    public void Energy_out_of_nowhere_is_never_hidden_by_the_mass(double mass) => Assert.Equal(1.0, Of(mass, 1e-6).ResidualRatio, 1e-12);

    private static EnergyLedger Of(double mass, double kinetic) =>
        EnergyLedger.Of(new double[3], contact: null, mass, new StoredEnergy(0.0, 0.0, 0.0), new StoredEnergy(kinetic, 0.0, 0.0));
}
