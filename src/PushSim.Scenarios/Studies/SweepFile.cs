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
    public static DrawableResult At(string file, IReadOnlyList<SweepInput> inputs, int[] place) =>
        DrawableScenario.Open(file, new ReadOptions { Set = [.. inputs.Select((input, k) => (input.Key, input.Texts[place[k]]))] });
}
