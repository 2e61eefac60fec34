using PushSim.Analysis.Compare;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Tones of made-up sounds: no real recording is at hand. What was put in is what must be told.</summary>
public class SoundSpectrumTests
{
    private const double Rate = 44100.0;

    // a hum at a frequency with multiples that fall by half, in white noise of a deviation
    private static double[] Sound(double frequency, double noise, double seconds)
    {
        var random = new Random(7);
        return [.. Enumerable.Range(0, (int)(seconds * Rate)).Select(i =>
        {
            double t = i / Rate, sum = noise * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5) * 2.0;
            for (int k = 1; k <= 4 && frequency > 0.0; k++)
            {
                sum += Math.Pow(0.5, k - 1) * Math.Sin(2.0 * Math.PI * k * frequency * t);
            }

            return sum;
        })];
    }

    [Theory]
    [InlineData(53.0, 0.5)]
    [InlineData(193.0, 1.0)]
    [InlineData(420.0, 2.0)]
    public void A_buzz_is_told_with_its_multiples(double frequency, double noise)
    {
        SoundPeak peak = SoundSpectrum.Peaks(Sound(frequency, noise, 4.0), Rate)[0];
        Assert.Equal(frequency, peak.Frequency, 0.01 * frequency);
        Assert.True(peak.Harmonics >= 2, $"{peak.Harmonics}");
        Assert.True(peak.Width < 10.0, $"{peak.Width}");
    }

    [Fact]
    public void Noise_alone_has_no_tone() => Assert.Empty(SoundSpectrum.Peaks(Sound(0.0, 1.0, 5.0), Rate));
}
