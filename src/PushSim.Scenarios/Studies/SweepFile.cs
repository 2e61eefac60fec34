using PushSim.Analysis.Sweep;
using PushSim.Scenarios.Drawing;

namespace PushSim.Scenarios.Studies;

/// <summary>A scenario file at the points of a sweep.</summary>
public static class SweepFile
{
    /// <summary>The scenario of a point, with its values set anew.</summary>
    /// <param name="file">Scenario file, or robot file if the options name an opponent.</param>
    /// <param name="inputs">The inputs.</param>
    /// <param name="place">Number of the value of each input, from 0 [1].</param>
    /// <param name="options">How it is read at every point alike; null: the defaults.</param>
    public static DrawableResult At(string file, IReadOnlyList<SweepInput> inputs, int[] place, ReadOptions? options = null)
    {
        options ??= new ReadOptions();
        return DrawableScenario.Open(file, options with { Set = [.. options.Set, .. inputs.Select((input, k) => (input.Key, input.Texts[place[k]]))] });
    }
}
