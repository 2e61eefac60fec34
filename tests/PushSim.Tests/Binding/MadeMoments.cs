using PushSim.Binding;

namespace PushSim.Tests.Binding;

/// <summary>Moments of driven wheels made up, one sample a millisecond over one second.</summary>
internal static class MadeMoments
{
    /// <summary>Sample times [s].</summary>
    public static double[] Time { get; } = [.. Enumerable.Range(0, 1001).Select(i => 0.001 * i)];

    /// <summary>One wheel of a steady force.</summary>
    /// <param name="force">Its force [N].</param>
    /// <param name="kind">What binds it at each sample.</param>
    public static BindingMoments Wheel(double force, Func<int, BindingKind> kind) =>
        new(0, true, [.. Time.Select((_, i) => kind(i))], [.. Time.Select(_ => force)]);
}
