using PushSim.Powertrain;
using Xunit;

namespace PushSim.Tests.Measured;

/// <summary>Gearmotors on a pulsing bridge against a bench's sweep and step of command (data/SOURCES.md). The two wheels themselves differ by 6 to 15 % above half command and by more below.</summary>
public class MotorBenchTests
{
    [Theory]
    [InlineData(0.30, 0.10)]
    [InlineData(0.40, 0.05)]
    [InlineData(0.50, 0.05)]
    [InlineData(0.60, 0.05)]
    [InlineData(0.70, 0.05)]
    [InlineData(0.75, 0.05)]
    [InlineData(0.80, 0.05)]
    [InlineData(0.90, 0.05)]
    [InlineData(0.98, 0.05)]
    [InlineData(1.00, 0.05)]
    public void Coasting_meets_the_sweep(double command, double bound)
    {
        (double measured, double model) = MotorBench.At(command);
        Assert.True(Math.Abs((model / measured) - 1.0) < bound, FormattableString.Invariant($"{command:P0}: measured {measured:0} rpm, model {model:0} rpm ({(model / measured) - 1.0:P1}), L f {MotorBench.Product:0.000} V/A"));
    }

    /// <summary>Without knowing what the bridge does between pulses the model was this far off: the effect is no matter of a few per cent.</summary>
    [Fact]
    public void Braking_would_be_far_below()
    {
        (double measured, double model) = MotorBench.At(0.4, BetweenPulses.Brake);
        Assert.True(model < 0.6 * measured, FormattableString.Invariant($"measured {measured:0}, braking {model:0} rpm"));
    }

    [Fact]
    public void The_start_takes_as_long()
    {
        (double measured, double model) = MotorBench.Start();
        Assert.True(Math.Abs((model / measured) - 1.0) < 0.25, FormattableString.Invariant($"measured {measured:0.000} s, model {model:0.000} s"));
    }
}
