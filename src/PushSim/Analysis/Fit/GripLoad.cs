using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Fit;

/// <summary>From the force on a level tether to the friction of the tyres under test. A tether at height h moves load from one axle to the other:
/// <code>
/// sum N = m g + D,   sum x N = x_c m g + x_D D -+ h F,   sum y N = y_c m g + y_D D      (- powered, + dragged ahead)
/// mu = (F +- mu_skid N_skid) / N_tested                                                 (+ powered, - dragged)
/// </code>
/// with each wheel a spring; wheels that would pull leave the floor. Tested are the driven wheels (all wheels if none is driven);
/// other wheels roll freely. Where all wheels are tested and alike, the height does not matter. A tether that is not level is not allowed for.</summary>
public sealed class GripLoad
{
    private const double Gravity = 9.80665;

    // Unit of lengths while loads are solved for [m].
    private const double LargeLength = 10.0;

    // Share of the largest singular value below which one counts as zero [1].
    private const double Zero = 1e-12;

    private readonly double _fixed;
    private readonly RobotSettings? _robot;
    private readonly double _height;
    private readonly bool _isDrag;
    private readonly bool[] _isTested = [];

    private GripLoad(double load, double off) => (_fixed, Off) = (load, off);

    private GripLoad(RobotSettings robot, double height, bool isDrag, double off)
    {
        (_robot, _height, _isDrag, Off) = (robot, height, isDrag, off);
        _isTested = Tested(robot);
    }

    /// <summary>Which wheels are under test, by their place in the robot: the driven ones, all but skids if none is driven.</summary>
    internal static bool[] Tested(RobotSettings robot)
    {
        HashSet<int> driven = [.. robot.DrivenWheels];
        return [.. robot.Wheels.Select((w, i) => !w.IsSkid && (driven.Count == 0 || driven.Contains(i)))];
    }

    /// <summary>Numbers of the wheels under test, which share the load of the test, in the robot's order: the driven ones, all but skids if none is driven [1].</summary>
    public static IReadOnlyList<int> TestedWheels(RobotSettings robot)
    {
        bool[] isTested = Tested(robot);
        return [.. Enumerable.Range(0, isTested.Length).Where(i => isTested[i])];
    }

    /// <summary>Half-width, two standard deviations, of an error that all pulls of a test have in common, as a share of the friction: its load and the cell's calibration [1]. More pulls do not make it smaller, and between tyres
    /// of one test it cancels.</summary>
    public double Off { get; }

    /// <summary>Whether the height of the tether makes a difference.</summary>
    public bool DependsOnHeight => _robot is not null && !_isTested.All(t => t);

    /// <summary>A load that is known and stays.</summary>
    /// <param name="load">Load on the tyres under test [N].</param>
    /// <param name="off">Half-width of what load and calibration of the cell may both be off, as a share [1].</param>
    public static GripLoad Fixed(double load, double off = 0.0) => new(load, off);

    /// <summary>The load of a robot's tested wheels.</summary>
    /// <param name="robot">The robot.</param>
    /// <param name="height">Height of the tether above the floor [m].</param>
    /// <param name="isDrag">True if it is dragged ahead with wheels locked; false if it pulls on a tether behind it.</param>
    /// <param name="off">Half-width of what load and calibration of the cell may both be off, as a share [1].</param>
    public static GripLoad Of(RobotSettings robot, double height, bool isDrag, double off = 0.0) => new(robot, height, isDrag, off);

    /// <summary>Load on the tyres under test while the tether pulls that hard [N].</summary>
    public double LoadAt(double force) => _robot is null ? _fixed : Sum(Loads(force), i => _isTested[i]);

    /// <summary>Friction of the tyres under test [1].</summary>
    /// <param name="force">Force on the tether [N].</param>
    public double Friction(double force)
    {
        if (_robot is null)
        {
            return force / _fixed;
        }

        double[] loads = Loads(force);
        double skids = Skids(loads);
        return (force + (_isDrag ? -skids : skids)) / Sum(loads, i => _isTested[i]);
    }

    /// <summary>A robot that pulls creeps forward until its tyres slide, and its skids with it; then it stands or is drawn back, and they hold less, or the other way. Friction
    /// if they hold that way with all they have [1]; null without skids, or where the robot is dragged.</summary>
    /// <param name="force">Force on the tether [N].</param>
    public double? FrictionDrawnBack(double force)
    {
        if (_robot is null || _isDrag || !_robot.Wheels.Any(w => w.IsSkid))
        {
            return null;
        }

        double[] loads = Loads(force);
        return (force - Skids(loads)) / Sum(loads, i => _isTested[i]);
    }

    // Sliding friction of all skids [N].
    private double Skids(double[] loads) => loads.Select((n, i) => _robot!.Wheels[i].IsSkid ? _robot.Wheels[i].Tyre.KineticFriction * n : 0.0).Sum();

    private static double Sum(double[] loads, Func<int, bool> isIn) => loads.Where((_, i) => isIn(i)).Sum();

    private double[] Loads(double force)
    {
        RobotSettings robot = _robot!;
        double weight = robot.Chassis.Mass * Gravity;
        double total = weight + robot.Chassis.Downforce;
        double x = (weight * robot.Chassis.CentreOfMassX) + (robot.Chassis.Downforce * robot.Chassis.DownforceX) + (_height * (_isDrag ? force : -force));
        double y = (weight * robot.Chassis.CentreOfMassY) + (robot.Chassis.Downforce * robot.Chassis.DownforceY);
        bool[] stands = [.. robot.Wheels.Select(_ => true)];
        double[] loads = [];
        for (int pass = 0; pass < robot.Wheels.Count; pass++)
        {
            loads = Solve(robot, stands, Vector<double>.Build.Dense([total, x, y]));
            int worst = Array.IndexOf(loads, loads.Min());
            if (loads[worst] >= -1e-9 * total)
            {
                break;
            }

            stands[worst] = false;
        }

        return loads;
    }

    // N_i = k_i (z + a x_i + b y_i); by those singular values that are not zero, so that a robot tipped onto one axle still gives its loads. Lengths in so large a
    // unit that the axle then carries the whole weight and gives up the moment that it cannot hold.
    private static double[] Solve(RobotSettings robot, bool[] stands, Vector<double> sums)
    {
        Vector<double> Row(WheelSettings w) => Vector<double>.Build.Dense([1.0, w.X / LargeLength, w.Y / LargeLength]);
        Matrix<double> a = Matrix<double>.Build.Dense(3, 3);
        for (int i = 0; i < stands.Length; i++)
        {
            WheelSettings w = robot.Wheels[i];
            a += stands[i] ? w.Tyre.VerticalStiffness * Row(w).OuterProduct(Row(w)) : Matrix<double>.Build.Dense(3, 3);
        }

        Svd<double> svd = a.Svd();
        Vector<double> along = svd.U.TransposeThisAndMultiply(sums.PointwiseMultiply(Vector<double>.Build.Dense([1.0, 1.0 / LargeLength, 1.0 / LargeLength])));
        Vector<double> s = svd.VT.TransposeThisAndMultiply(along.MapIndexed((j, v) => svd.S[j] > Zero * svd.S[0] ? v / svd.S[j] : 0.0));
        return [.. robot.Wheels.Select((w, i) => stands[i] ? w.Tyre.VerticalStiffness * s.DotProduct(Row(w)) : 0.0)];
    }
}
