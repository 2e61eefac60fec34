using PushSim.Analysis.Fit;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>The force that the load cell of a scenario shows for a tyre, by the engine: filtered, without noise, tare and steps.</summary>
internal sealed class SimulatedTest
{
    // Enough to follow a breakaway through a load cell [1/s].
    private const double SampleRate = 1000.0;

    // Derivatives are differences of runs: a looser run would show its steps in them [1].
    private const double Tolerance = 1e-5;

    private readonly ScenarioSettings _scenario;
    private readonly bool[] _isTested;

    public SimulatedTest(ScenarioSettings scenario)
    {
        _scenario = scenario with
        {
            Measured = null,
            Numerics = scenario.Numerics with { SampleRate = SampleRate, Tolerance = Math.Min(Tolerance, scenario.Numerics.Tolerance) },
        };
        _isTested = GripLoad.Tested(scenario.Robot);
    }

    /// <summary>The tyre under test as the robot file has it.</summary>
    public TyreSettings Tyre => _scenario.Robot.Wheels[Array.IndexOf(_isTested, true)].Tyre;

    /// <summary>End of the simulated test [s].</summary>
    public double End => _scenario.Manoeuvre.EndTime;

    /// <summary>Runs done so far [1].</summary>
    public int Runs { get; private set; }

    /// <summary>The force for each of some tyres on all wheels under test; null where a run does not reach its end.</summary>
    /// <param name="tyres">The tyres.</param>
    /// <param name="end">Where the runs may end, before or at <see cref="End"/> [s].</param>
    /// <param name="cancel">Stops the runs.</param>
    public ForceHistory?[] Run(IReadOnlyList<TyreSettings> tyres, double end, CancellationToken cancel)
    {
        Runs += tyres.Count;
        return _scenario.Tether is null ? new ForceHistory?[tyres.Count] : [.. TetherRun.Of([.. tyres.Select(t => With(t, end))], cancel).Select(Filtered)];
    }

    private ScenarioSettings With(TyreSettings tyre, double end)
    {
        RobotSettings robot = _scenario.Robot with { Wheels = [.. _scenario.Robot.Wheels.Select((w, i) => _isTested[i] ? w with { Tyre = tyre } : w)] };
        return _scenario with { Robot = robot, Manoeuvre = _scenario.Manoeuvre with { EndTime = end } };
    }

    private ForceHistory? Filtered((double[] Time, double[] Force)? run) => run is (double[] time, double[] force)
        ? new ForceHistory(1.0 / SampleRate, LoadCell.Filter(time, force, _scenario.Tether?.Cell?.FilterTime ?? 0.0))
        : null;
}
