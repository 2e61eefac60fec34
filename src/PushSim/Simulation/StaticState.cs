using MathNet.Numerics.LinearAlgebra;
using PushSim.Chassis;

namespace PushSim.Simulation;

/// <summary>The robot standing on its springs: heave, pitch and roll from three equations of balance, wheels that would pull left
/// out one by one, first for small angles, then exactly. In-plane gravity acts at the centre of mass and is held at the floor.</summary>
/// <param name="Heave">Heave z, negative is sunk in [m].</param>
/// <param name="Pitch">Pitch, nose down positive [rad].</param>
/// <param name="Roll">Roll, left side up positive [rad].</param>
/// <param name="Loads">Load of each wheel [N].</param>
/// <param name="Underside">What the body itself carries on the floor [N].</param>
internal sealed record StaticState(double Heave, double Pitch, double Roll, double[] Loads, double Underside)
{
    // Squared width over squared length of what the wheels span, below which they stand on a line [1].
    private const double LeastSpread = 1e-8;

    // Newton steps of the exact balance, halvings of each, and by how much a state is moved to see what that does [m or 1].
    private const int NewtonSteps = 30, Halvings = 12;
    private const double Nudge = 1e-9;

    /// <summary>Solves the standing state of a scenario's robot.</summary>
    /// <exception cref="SimulationException">The centre of mass does not stand over the wheels, the robot tips over on the slope, or the floor leans past upright.</exception>
    public static StaticState Solve(ScenarioSettings scenario)
    {
        if (StandingOn(scenario) is { } state)
        {
            return state;
        }

        bool standsLevel = StandingOn(scenario with { Floor = scenario.Floor with { SlopeX = 0.0, SlopeY = 0.0 } }) is not null;
        throw new SimulationException(standsLevel
            ? $"{scenario.Robot.Name} does not stand on this slope, it tips over; lower slope_x or slope_y or the centre of mass, or set the wheels further apart"
            : "the centre of mass does not stand over the wheels; move it or the wheels");
    }

    // Null where it does not stand
    private static StaticState? StandingOn(ScenarioSettings scenario)
    {
        RobotSettings robot = scenario.Robot;
        ChassisSettings c = robot.Chassis;
        (double gx, double gy, double gz) = ModelBuilder.Gravity(scenario.Floor);
        if (!(gz > 0.0))
        {
            throw new SimulationException("the floor's slopes along x and y together are steeper than upright; lower slope_x or slope_y");
        }

        (double sine, double cosine) = Math.SinCos(scenario.Manoeuvre.InitialHeading);
        double forward = c.Mass * ((cosine * gx) + (sine * gy));
        double left = c.Mass * ((cosine * gy) - (sine * gx));

        // sum N = m g + D,  sum x N = x_D D + h forward,  sum y N = y_D D + h left
        double[] load =
        [
            (c.Mass * gz) + c.Downforce,
            ((c.DownforceX - c.CentreOfMassX) * c.Downforce) + (c.CentreOfMassHeight * forward),
            ((c.DownforceY - c.CentreOfMassY) * c.Downforce) + (c.CentreOfMassHeight * left),
        ];
        return Linear(robot, load) is { } solution ? Exact(scenario, solution, c.Mass * gz, forward, left) : null;
    }

    /// <summary>Heave [m], pitch and roll [rad] of a robot that stands on a level floor, for small angles and with nothing but its wheels on the floor; null where it does not stand.</summary>
    /// <param name="robot">The robot.</param>
    /// <param name="gravity">Gravity [m/s^2].</param>
    public static (double Heave, double Pitch, double Roll)? OnLevelFloor(RobotSettings robot, double gravity)
    {
        ChassisSettings c = robot.Chassis;
        double[] load = [(c.Mass * gravity) + c.Downforce, (c.DownforceX - c.CentreOfMassX) * c.Downforce, (c.DownforceY - c.CentreOfMassY) * c.Downforce];
        return Linear(robot, load) is { } s ? (s[0], s[1], s[2]) : null;
    }

    // The three equations with the wheels that do not pull; null where it does not stand
    private static double[]? Linear(RobotSettings robot, double[] load)
    {
        ChassisSettings c = robot.Chassis;
        bool[] stands = [.. robot.Wheels.Select(_ => true)];
        for (int pass = 0; pass <= robot.Wheels.Count && SpanArea(robot, stands); pass++)
        {
            Matrix<double> stiffness = Stiffness(robot, stands);
            double[] raised = Raised(robot, stands);
            double[] solution = [.. stiffness.Solve(Vector<double>.Build.Dense([load[0] + raised[0], load[1] + raised[1], load[2] + raised[2]]))];
            double[] loads = [.. robot.Wheels.Select((w, i) => stands[i] ? -w.Tyre.VerticalStiffness * (w.Height + Height(c, w, solution)) : 0.0)];
            int worst = Array.IndexOf(loads, loads.Min());
            if (!double.IsFinite(loads[worst]))
            {
                break;
            }

            if (loads[worst] >= 0.0)
            {
                return solution;
            }

            stands[worst] = false;
        }

        return null;
    }

    // Whether the standing wheels span an area: on a line the equations have no solution, and rounding would make one up.
    private static bool SpanArea(RobotSettings robot, bool[] stands)
    {
        Tyres.WheelSettings[] on = [.. robot.Wheels.Where((_, i) => stands[i])];
        if (on.Length < 3)
        {
            return false;
        }

        double x = on.Average(w => w.X);
        double y = on.Average(w => w.Y);
        double xx = on.Sum(w => (w.X - x) * (w.X - x));
        double yy = on.Sum(w => (w.Y - y) * (w.Y - y));
        double xy = on.Sum(w => (w.X - x) * (w.Y - y));
        return (xx * yy) - (xy * xy) > LeastSpread * (xx + yy) * (xx + yy);
    }

    private static double Height(ChassisSettings c, Tyres.WheelSettings w, double[] s) =>
        s[0] - (s[1] * (w.X - c.CentreOfMassX)) + (s[2] * (w.Y - c.CentreOfMassY));

    // Balance with wheels, downforce and body on the floor as the equations have them, by Newton steps that never grow the residual.
    private static StaticState Exact(ScenarioSettings scenario, double[] start, double weight, double forward, double left)
    {
        RobotSettings robot = scenario.Robot;
        RobotEquations<R1> eq = ModelBuilder.Build<R1>(scenario, new StateLayout(scenario), hasLedger: false);
        double[] loads = new double[robot.Wheels.Count];
        double[] s = start;
        double[] residual = Residual(eq, s, weight, forward, left, loads);
        for (int pass = 0; pass < NewtonSteps; pass++)
        {
            Matrix<double> slope = Matrix<double>.Build.Dense(3, 3);
            for (int j = 0; j < 3; j++)
            {
                // to both sides, so that the mirror image is the mirror image to the bit
                double[] more = [.. s];
                double[] less = [.. s];
                more[j] += Nudge;
                less[j] -= Nudge;
                double[] above = Residual(eq, more, weight, forward, left, loads);
                double[] below = Residual(eq, less, weight, forward, left, loads);
                slope.SetColumn(j, [.. above.Zip(below, (x, y) => (x - y) / (2.0 * Nudge))]);
            }

            Vector<double> step = slope.Solve(Vector<double>.Build.Dense(residual));
            double share = 1.0;
            double before = Size(residual);
            bool isBetter = false;
            for (int halving = 0; halving < Halvings && !isBetter; halving++)
            {
                double[] next = [s[0] - (share * step[0]), s[1] - (share * step[1]), s[2] - (share * step[2])];
                double[] at = Residual(eq, next, weight, forward, left, loads);
                isBetter = Size(at) < before;
                (s, residual) = isBetter ? (next, at) : (s, residual);
                share *= 0.5;
            }

            if (!isBetter)
            {
                break;
            }
        }

        Residual(eq, s, weight, forward, left, loads);
        return new StaticState(s[0], s[1], s[2], loads, eq.Underside.NormalForce.Value);
    }

    private static double Size(double[] r) => Math.Abs(r[0]) + ((Math.Abs(r[1]) + Math.Abs(r[2])) / 0.1);

    // What is left of the force upward [N] and of the moments, nose down and left side up [N m], with the floor holding what gravity pulls along it.
    private static double[] Residual(RobotEquations<R1> eq, double[] s, double weight, double forward, double left, double[] loads)
    {
        Attitude<R1> attitude = default;
        attitude.Set(s[2], s[1]);
        Wrench<R1> wrench = default;
        eq.Press(attitude, s[0], ref wrench);
        R1[] bristles = new R1[Contact.ContactFriction.Bristles];
        R1 centre = eq.Body.Height + s[0];
        Tyres.WheelPlace<R1> place = default;
        double low = 0.0;
        double all = 0.0;
        for (int i = 0; i < loads.Length; i++)
        {
            place.Set(eq.Wheels[i], attitude, default, centre);
            loads[i] = Math.Max(0.0, -eq.Wheels[i].VerticalStiffness.Value * place.Height.Value);
            wrench.Add(place.X, place.Y, place.Z, 0.0, 0.0, loads[i]);
            low += loads[i] * place.Z.Value;
            all += loads[i];
        }

        eq.Underside.Apply(attitude, default, 0.0, 1.0, centre, 0.0, bristles, new R1[bristles.Length], ref wrench);
        double level = all > 0.0 ? low / all : -centre.Value;
        return [wrench.Fz.Value - weight, wrench.Pitch.Value - (level * forward), wrench.Roll.Value + (level * left)];
    }

    // What wheels that stand higher or lower than the others take off the balance.
    private static double[] Raised(RobotSettings robot, bool[] stands)
    {
        double[] sum = new double[3];
        for (int i = 0; i < stands.Length; i++)
        {
            double k = stands[i] ? robot.Wheels[i].Tyre.VerticalStiffness * robot.Wheels[i].Height : 0.0;
            sum[0] += k;
            sum[1] += k * (robot.Wheels[i].X - robot.Chassis.CentreOfMassX);
            sum[2] += k * (robot.Wheels[i].Y - robot.Chassis.CentreOfMassY);
        }

        return sum;
    }

    private static Matrix<double> Stiffness(RobotSettings robot, bool[] stands)
    {
        Matrix<double> a = Matrix<double>.Build.Dense(3, 3);
        for (int i = 0; i < stands.Length; i++)
        {
            if (stands[i])
            {
                double k = robot.Wheels[i].Tyre.VerticalStiffness;
                double x = robot.Wheels[i].X - robot.Chassis.CentreOfMassX;
                double y = robot.Wheels[i].Y - robot.Chassis.CentreOfMassY;
                double[] row = [1.0, x, y];
                double[] column = [-1.0, x, -y];
                for (int r = 0; r < 3; r++)
                {
                    for (int q = 0; q < 3; q++)
                    {
                        a[r, q] += k * row[r] * column[q];
                    }
                }
            }
        }

        return a;
    }
}
