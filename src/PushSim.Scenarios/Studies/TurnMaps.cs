using PushSim.Analysis.Turning;
using PushSim.Runs;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Scenes;

namespace PushSim.Scenarios.Studies;

/// <summary>Stability maps of a scenario file over two of its values.</summary>
public static class TurnMaps
{
    /// <summary>The kinds of manoeuvre that have a map, in words of the files.</summary>
    public static string Manoeuvres => string.Join(" or ", ManoeuvreWord.All.Where(w => w.Traits.Family == ManoeuvreFamily.Turn).Select(w => w.Word));

    /// <summary>The scenario with the two values set anew.</summary>
    /// <param name="file">The scenario file.</param>
    /// <param name="x">First axis.</param>
    /// <param name="xValue">Its value [the unit named].</param>
    /// <param name="y">Second axis.</param>
    /// <param name="yValue">Its value [the unit named].</param>
    /// <param name="options">Limits of reading, and what else is set anew at every point; null: the defaults.</param>
    public static ReadResult At(string file, MapAxis x, double xValue, MapAxis y, double yValue, ReadOptions? options = null) =>
        ScenarioReader.Read(file, (options ?? new ReadOptions()) with { Set = [.. options?.Set ?? [], (x.Key, x.TextOf(xValue)), (y.Key, y.TextOf(yValue))] });

    /// <summary>Errors of the map's ends, where a wrong key or unit shows; empty if it can be computed.</summary>
    /// <param name="file">The scenario file.</param>
    /// <param name="x">First axis.</param>
    /// <param name="y">Second axis.</param>
    /// <param name="options">Limits of reading, and what else is set anew at every point; null: the defaults.</param>
    public static IReadOnlyList<Problem> Problems(string file, MapAxis x, MapAxis y, ReadOptions? options = null)
    {
        IEnumerable<Problem[]> ends = new[] { At(file, x, x.From, y, y.From, options), At(file, x, x.To, y, y.To, options) }.Select(r => r.Problems.Where(p => p.Severity == Severity.Error).ToArray());
        return ends.FirstOrDefault(e => e.Length > 0) ?? [];
    }

    /// <summary>Computes a map as fine as usual.</summary>
    /// <param name="file">The scenario file.</param>
    /// <param name="x">First axis.</param>
    /// <param name="y">Second axis.</param>
    /// <param name="options">Limits of reading, and what else is set anew at every point; null: the defaults.</param>
    /// <param name="rowDone">Called after each of <see cref="StabilityMap.UsualRows"/>, from several threads; may be null.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static StabilityMap Compute(string file, MapAxis x, MapAxis y, ReadOptions? options = null, Action? rowDone = null, CancellationToken cancel = default) =>
        Compute(file, x, y, options, rowDone, WorkBudget.Endless(cancel));

    /// <summary>The same within a limit of work.</summary>
    /// <param name="file">The scenario file.</param>
    /// <param name="x">First axis.</param>
    /// <param name="y">Second axis.</param>
    /// <param name="options">Limits of reading, and what else is set anew at every point; null: the defaults.</param>
    /// <param name="rowDone">Called after each of <see cref="StabilityMap.UsualRows"/>, from several threads; may be null.</param>
    /// <param name="work">The work for all rows.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static StabilityMap Compute(string file, MapAxis x, MapAxis y, ReadOptions? options, Action? rowDone, WorkBudget work) =>
        StabilityMap.Compute((x.From, x.To), (y.From, y.To), (a, b) => At(file, x, a, y, b, options).Scenario, rowDone, work);
}
