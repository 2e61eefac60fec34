using System.Collections.Concurrent;
using PushSim.Simulation;

namespace PushSim.Tests.Oracle;

/// <summary>
/// Runs of the plain implementation that several tests read: each scenario at a step and at half of it, stepped once in a whole run
/// of the tests, by whoever asks first.
/// </summary>
internal static class OracleRuns
{
    /// <summary>The usual step, one twice as long where halving that still changes forces by less than a fifth of the bound, and one for hard bumps [s].</summary>
    public const double Narrow = 1e-3 / 128, Wide = 1e-3 / 64, Finest = 1e-3 / 256;

    private static readonly ConcurrentDictionary<(ScenarioSettings Scenario, double Step), Lazy<OracleRecord[]>> s_runs = new(new Same());

    /// <summary>Records of all its robots at twice the step and at the step.</summary>
    public static (OracleRecord[] Coarse, OracleRecord[] Fine) Both(ScenarioSettings scenario, double step) => (At(scenario, 2.0 * step), At(scenario, step));

    /// <summary>Records of all its robots.</summary>
    public static OracleRecord[] At(ScenarioSettings scenario, double step) =>
        s_runs.GetOrAdd((scenario, step), key => new Lazy<OracleRecord[]>(() => OracleRun.All(key.Scenario, key.Step))).Value;

    // the same object: its many numbers are not compared
    private sealed class Same : IEqualityComparer<(ScenarioSettings Scenario, double Step)>
    {
        public bool Equals((ScenarioSettings Scenario, double Step) x, (ScenarioSettings Scenario, double Step) y) =>
            ReferenceEquals(x.Scenario, y.Scenario) && x.Step == y.Step;

        public int GetHashCode((ScenarioSettings Scenario, double Step) key) =>
            HashCode.Combine(System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(key.Scenario), key.Step);
    }
}
