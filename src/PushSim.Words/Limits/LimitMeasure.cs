using PushSim.Analysis.Limits;
using PushSim.Words.Answers;

namespace PushSim.Words.Limits;

/// <summary>One number of the limits by which designs are compared.</summary>
/// <param name="Key">Key in JSON.</param>
/// <param name="Words">Plain words.</param>
/// <param name="Unit">Unit on the screen.</param>
/// <param name="Digits">Digits after the point [1].</param>
/// <param name="Better">Which way it is better.</param>
/// <param name="Of">Its value in the unit of the key; null where it does not apply.</param>
public sealed record LimitMeasure(string Key, string Words, string Unit, int Digits, Better Better, Func<LimitResult, double?> Of) : Measure(Key, Words, Unit, Digits, Better)
{
    /// <summary>All of them; the first is what a sentence compares.</summary>
    public static IReadOnlyList<LimitMeasure> All { get; } =
    [
        new("pull_n", "steady pull", "N", 2, Better.More, r => r.Now.Pull) { Says = "{0} pulls {1}", SaysNone = "{0} has no steady pull" },
        new("motor_force_n", "motors can give", "N", 2, Better.More, r => r.Now.MotorForce),
        new("traction_peak_force_n", "tyres hold, peak", "N", 2, Better.More, r => r.Now.TractionPeak),
        new("traction_sliding_force_n", "tyres hold, sliding", "N", 2, Better.More, r => r.Now.TractionSliding),
        new("crossing_speed_m_per_s", "tyres bind up to", "m/s", 2, Better.Neither, r => r.Now.CrossingSpeed),
        new("top_speed_m_per_s", "top speed", "m/s", 2, Better.More, r => r.Now.TopSpeed),
        .. Enum.GetValues<LimitOutput>().Where(o => o != LimitOutput.Pull).Select(Output),
        new("peak_winding_temperature_degc", "hottest winding in a match", "°C", 0, Better.Less, r => r.Match.PeakWinding),
        new("charge_used_a_s", "charge used in a match", "mA h", 0, Better.Less, r => r.Match.ChargeUsed) { ScreenScale = 1.0 / 3.6 },
    ];

    private static LimitMeasure Output(LimitOutput output) => new(
        LimitWords.Key(output), LimitWords.Of(output), LimitWords.Unit(output), 3, output == LimitOutput.LaunchTime ? Better.Less : Better.More,
        r => r.Outputs.TryGetValue(output, out double value) ? value : null);
}
