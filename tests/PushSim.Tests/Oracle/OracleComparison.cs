using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Tests.Oracle;

/// <summary>
/// Largest differences of two histories of one robot, as shares of what the run itself reaches. Forces: of each wheel's own
/// peak in that direction (at least a twentieth of the largest of any wheel). Places: of the way covered. Heading: of the
/// largest turn, at least 0.1 rad. Times: of the time at which half of the way, and of the turn, is done.
/// </summary>
internal sealed class OracleComparison
{
    private OracleComparison()
    {
    }

    public double Forces { get; private set; }
    public double Places { get; private set; }
    public double Headings { get; private set; }
    public double Times { get; private set; }
    public double Currents { get; private set; }
    public string WorstForce { get; private set; } = "";

    /// <summary>Compares the engine's first robot with the oracle's record.</summary>
    public static OracleComparison Of(RunResult engine, OracleRecord oracle) =>
        Of(new EngineSeries(engine.Trace, engine.Scenario.Robot), oracle);

    /// <summary>Compares the engine's opponent with the oracle's record, both in the opponent's own floor frame.</summary>
    public static OracleComparison OfOpponent(RunResult engine, OracleRecord oracle) =>
        Of(new EngineSeries(engine.Opponent!.Trace, engine.Opponent.Robot), oracle);

    /// <summary>Compares two records of the oracle.</summary>
    public static OracleComparison Of(OracleRecord one, OracleRecord two, RobotSettings robot) =>
        Of(new RecordSeries(one, robot), two);

    private static OracleComparison Of(ISeries engine, OracleRecord oracle)
    {
        var result = new OracleComparison();
        int count = Math.Min(engine.Time.Count, oracle.Count);
        for (int axis = 0; axis < 3; axis++)
        {
            double floor = 0.0;
            for (int w = 0; w < engine.Wheels; w++)
            {
                floor = Math.Max(floor, 0.05 * Peak(engine.Force(w, axis), count));
            }
            for (int w = 0; w < engine.Wheels; w++)
            {
                string key = (axis == 0 ? "load " : axis == 1 ? "fx " : "fy ") + w;
                result.Force(key, engine.Force(w, axis), oracle[key], floor, count);
            }
        }
        result.Force("tether", engine.Tether, oracle["tether"], 0.0, count);
        result.Motion(engine, oracle, count);
        for (int d = 0; d < engine.Drives; d++)
        {
            if (engine.Current(d) is { } current)
            {
                double peak = Peak(current, count);
                result.Currents = Math.Max(result.Currents, peak > 1e-6 ? Worst(current, oracle[$"amp {d} 0"], count) / peak : 0.0);
            }
        }
        return result;
    }

    private void Force(string name, IReadOnlyList<double>? engine, IReadOnlyList<double> oracle, double floor, int count)
    {
        if (engine is null)
        {
            return;
        }
        double scale = Math.Max(Peak(engine, count), floor);
        double share = scale > 1e-6 ? Worst(engine, oracle, count) / scale : 0.0;
        if (share > Forces)
        {
            Forces = share;
            WorstForce = name;
        }
    }

    private void Motion(ISeries engine, OracleRecord oracle, int count)
    {
        var wayEngine = new double[count];
        var wayOracle = new double[count];
        double off = 0.0;
        for (int k = 1; k < count; k++)
        {
            wayEngine[k] = wayEngine[k - 1] + double.Hypot(engine.X[k] - engine.X[k - 1], engine.Y[k] - engine.Y[k - 1]);
            wayOracle[k] = wayOracle[k - 1] + double.Hypot(oracle["x"][k] - oracle["x"][k - 1], oracle["y"][k] - oracle["y"][k - 1]);
            off = Math.Max(off, double.Hypot(engine.X[k] - oracle["x"][k], engine.Y[k] - oracle["y"][k]));
        }
        double way = wayEngine[count - 1];
        Places = way > 1e-6 ? off / way : off / 1e-6;
        double[] turnEngine = [.. engine.Psi.Select(p => p - engine.Psi[0])];
        double[] turnOracle = [.. oracle["psi"].Select(p => p - oracle["psi"][0])];
        double turn = Peak(turnEngine, count);
        Headings = Worst(turnEngine, turnOracle, count) / Math.Max(turn, 0.1);
        if (way > 1e-3)
        {
            Times = Late(engine.Time, wayEngine, wayOracle, 0.5 * way);
        }
        if (turn > 0.1)
        {
            Times = Math.Max(Times, Late(engine.Time, turnEngine, turnOracle, 0.5 * turn));
        }
    }

    private static double Late(IReadOnlyList<double> time, double[] one, double[] two, double level)
    {
        double a = Crossing(time, one, level);
        return Math.Abs(a - Crossing(time, two, level)) / a;
    }

    private static double Crossing(IReadOnlyList<double> time, double[] values, double level)
    {
        for (int k = 1; k < values.Length; k++)
        {
            if (Math.Abs(values[k]) >= level)
            {
                double before = Math.Abs(values[k - 1]);
                return time[k - 1] + ((time[k] - time[k - 1]) * (level - before) / (Math.Abs(values[k]) - before));
            }
        }
        return double.PositiveInfinity;
    }

    private static double Peak(IReadOnlyList<double> values, int count)
    {
        double peak = 0.0;
        for (int k = 0; k < count; k++)
        {
            peak = Math.Max(peak, Math.Abs(values[k]));
        }
        return peak;
    }

    private static double Worst(IReadOnlyList<double> one, IReadOnlyList<double> two, int count)
    {
        double worst = 0.0;
        for (int k = 0; k < count; k++)
        {
            double off = Math.Abs(one[k] - two[k]);
            worst = off > worst || double.IsNaN(off) ? off : worst;
        }
        return worst;
    }

    private interface ISeries
    {
        IReadOnlyList<double> Time { get; }
        IReadOnlyList<double> X { get; }
        IReadOnlyList<double> Y { get; }
        IReadOnlyList<double> Psi { get; }
        IReadOnlyList<double>? Tether { get; }
        int Wheels { get; }
        int Drives { get; }
        IReadOnlyList<double> Force(int wheel, int axis);
        IReadOnlyList<double>? Current(int drive);
    }

    private sealed class EngineSeries(Trace trace, RobotSettings robot) : ISeries
    {
        public IReadOnlyList<double> Time => trace.Time;
        public IReadOnlyList<double> X => trace.Body.X;
        public IReadOnlyList<double> Y => trace.Body.Y;
        public IReadOnlyList<double> Psi => trace.Body.Heading;
        public IReadOnlyList<double>? Tether => trace.Tether?.Force;
        public int Wheels => robot.Wheels.Count;
        public int Drives => robot.Drives.Count;

        public IReadOnlyList<double> Force(int wheel, int axis) =>
            axis == 0 ? trace.Wheels[wheel].Load : axis == 1 ? trace.Wheels[wheel].LongitudinalForce : trace.Wheels[wheel].LateralForce;

        public IReadOnlyList<double>? Current(int drive) => robot.Drives[drive].Motors.Count == 0
            ? null : trace.Motors.Single(m => m.Drive == drive && m.Motor == 0).Current;
    }

    private sealed class RecordSeries(OracleRecord record, RobotSettings robot) : ISeries
    {
        private static readonly string[] s_beginnings = ["load ", "fx ", "fy "];

        public IReadOnlyList<double> Time => record.Time;
        public IReadOnlyList<double> X => record["x"];
        public IReadOnlyList<double> Y => record["y"];
        public IReadOnlyList<double> Psi => record["psi"];
        public IReadOnlyList<double>? Tether => record["tether"];
        public int Wheels => robot.Wheels.Count;
        public int Drives => robot.Drives.Count;

        public IReadOnlyList<double> Force(int wheel, int axis) => record[s_beginnings[axis] + wheel];

        public IReadOnlyList<double>? Current(int drive) => robot.Drives[drive].Motors.Count == 0 ? null : record[$"amp {drive} 0"];
    }
}
