using MathNet.Numerics.LinearAlgebra;
using PushSim.Chassis;

namespace PushSim.Simulation;

/// <summary>The robot standing on its springs: heave, pitch and roll from three equations of balance, wheels that would pull left
/// out one by one, first for small angles, then exactly. In-plane gravity acts at the centre of mass and is held at the floor.</summary>
/// <param name="Heave">Heave z, negative is sunk in [m].</param>
/// <param name="Pitch">Pitch, nose down positive [rad].</param>
/// <param name="Roll">Roll, left side up positive [rad].</param>
/// <param name="Loads">Load of each wheel [N].</param>
internal sealed record StaticState(double Heave, double Pitch, double Roll, double[] Loads)
{
    // Squared width over squared length of what the wheels span, below which they stand on a line [1].
    private const double LeastSpread = 1e-8;

    // Corrections of the solution for small angles: each takes off all but a share of the tilt [1].
    private const int Corrections = 12;

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
                return Corrected(robot, stands, solution, c.Mass * gz, forward, left);
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

    // Balance with the wheels' places and the downforce as the equations have them.
    private static StaticState Corrected(RobotSettings robot, bool[] stands, double[] s, double weight, double forward, double left)
    {
        ChassisSettings c = robot.Chassis;
        Matrix<double> stiffness = Stiffness(robot, stands);
        Tyres.WheelPlace<R1> place = default;
        double[] loads = new double[stands.Length];
        for (int pass = 0; pass < Corrections; pass++)
        {
            Attitude<R1> attitude = default;
            attitude.Set(s[2], s[1]);
            double centre = c.CentreOfMassHeight + s[0];
            (double n, double nx, double ny, double nz) = (0.0, 0.0, 0.0, 0.0);
            for (int i = 0; i < stands.Length; i++)
            {
                place.Set(ModelBuilder.WheelGeometry<R1>(robot, i), attitude, default, centre);
                loads[i] = stands[i] ? Math.Max(0.0, -robot.Wheels[i].Tyre.VerticalStiffness * place.Height.Value) : 0.0;
                n += loads[i];
                nx += loads[i] * place.X.Value;
                ny += loads[i] * place.Y.Value;
                nz += loads[i] * place.Z.Value;
            }

            attitude.ToHeading(c.DownforceX - c.CentreOfMassX, c.DownforceY - c.CentreOfMassY, -c.CentreOfMassHeight, out R1 dx, out R1 dy, out R1 dz);
            double gap = 1.0 + (Math.Max(0.0, centre + dz.Value) / c.DownforceGap);
            double down = c.Downforce / (gap * gap);
            Vector<double> step = stiffness.Solve(Vector<double>.Build.Dense(
            [
                weight + down - n,
                (dx.Value * down) - nx - (forward * nz / n),
                (dy.Value * down) - ny - (left * nz / n),
            ]));
            s = [s[0] + step[0], s[1] + step[1], s[2] + step[2]];
        }

        return new StaticState(s[0], s[1], s[2], loads);
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
