using PushSim.Analysis.Sweep;
using PushSim.Scenarios.Drawing;

namespace PushSim.Scenarios.Studies;

/// <summary>A scenario file at the points of a sweep.</summary>
public static class SweepFile
{
    /// <summary>The scenario of a point, with its values set anew.</summary>
    /// <param name="file">The scenario file.</param>
    /// <param name="inputs">The inputs.</param>
    /// <param name="place">Number of the value of each input, from 0 [1].</param>
    /// <param name="set">What else is set anew, at every point alike; null for nothing.</param>
    public static DrawableResult At(string file, IReadOnlyList<SweepInput> inputs, int[] place, IReadOnlyList<(string Path, string Value)>? set = null) =>
        DrawableScenario.Open(file, new ReadOptions { Set = [.. set ?? [], .. inputs.Select((input, k) => (input.Key, input.Texts[place[k]]))] });
}
