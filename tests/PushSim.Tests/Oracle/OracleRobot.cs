using PushSim.Chassis;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Surroundings;

namespace PushSim.Tests.Oracle;

/// <summary>
/// One robot in its own floor frame, stepped by the semi-implicit Euler rule: forces from the old state, new speeds from
/// the forces, new places from the new speeds. First order in the step.
/// </summary>
internal sealed class OracleRobot
{
    // The model as written writes crr N R tanh(omega_i / omega_s) and leaves omega_s open; only the first millimetres feel it.
    private const double RollingSpeed = 1.0;

    private readonly ChassisSettings _chassis;
    private readonly FloorSettings _floor;
    private readonly ManoeuvreSettings _manoeuvre;
    private readonly double _roll;
    private readonly double _pitch;
    private readonly double _yaw;
    private readonly double _gravityX;
    private readonly double _gravityY;
    private readonly double _gravityZ;
    private readonly bool _turned;
    private double _fx, _fy, _fz, _mx, _my, _mz;
    private double _bearing;

    /// <param name="robot">The robot.</param>
    /// <param name="manoeuvre">What it does.</param>
    /// <param name="floor">The floor, in the first robot's frame.</param>
    /// <param name="turned">True for an opponent, whose floor frame is the first one's turned by half a turn.</param>
    /// <param name="limitedGearDamping">See <see cref="OracleDrive.LimitedDamping"/>.</param>
    public OracleRobot(RobotSettings robot, ManoeuvreSettings manoeuvre, FloorSettings floor, bool turned = false, bool limitedGearDamping = false)
    {
        Settings = robot;
        _chassis = robot.Chassis;
        _floor = floor;
        _manoeuvre = manoeuvre;
        _turned = turned;
        ChassisSettings c = _chassis;
        _roll = c.RollInertia ?? c.Mass / 12.0 * ((c.Width * c.Width) + (c.Height * c.Height));
        _pitch = c.PitchInertia ?? c.Mass / 12.0 * ((c.Length * c.Length) + (c.Height * c.Height));
        _yaw = c.YawInertia ?? c.Mass / 12.0 * ((c.Length * c.Length) + (c.Width * c.Width));
        double sign = turned ? -1.0 : 1.0;
        _gravityX = -sign * floor.Gravity * Math.Sin(floor.SlopeX);
        _gravityY = -sign * floor.Gravity * Math.Sin(floor.SlopeY);
        _gravityZ = Math.Sqrt((floor.Gravity * floor.Gravity) - (_gravityX * _gravityX) - (_gravityY * _gravityY));
        Wheels = [.. robot.Wheels.Select(w => new OracleWheel(w, c.CentreOfMassX, c.CentreOfMassY))];
        Drives = [.. robot.Drives.Select(d => new OracleDrive(d, Wheels, floor.AirTemperature))];
        foreach (OracleDrive d in Drives)
        {
            for (int i = 0; i < d.Wheels.Length; i++)
            {
                d.Wheels[i].Drive = Array.IndexOf(Drives, d);
                d.Wheels[i].Ratio = d.Ratios[i];
            }
        }
        FreeSpin = new double[Wheels.Length];
        Controllers = [.. robot.Controllers.Select(k => new OracleController(k, Drives, floor.AirTemperature))];
        Battery = robot.Battery is null ? null : new OracleBattery(robot.Battery);
        foreach (OracleDrive d in Drives)
        {
            d.SetDamping(LargestCurrent);
            d.LimitedDamping = limitedGearDamping;
        }
        Psi = manoeuvre.InitialHeading;
        SetDown();
        StartRolling(manoeuvre.InitialSpeed);
    }

    public RobotSettings Settings { get; }
    public OracleWheel[] Wheels { get; }
    public OracleDrive[] Drives { get; }
    public OracleController[] Controllers { get; }
    public OracleBattery? Battery { get; }

    /// <summary>Spin of wheels that no drive turns.</summary>
    public double[] FreeSpin { get; }

    public double X, Y, Psi, U, V, R, Z, ZRate, Theta, ThetaRate, Phi, PhiRate;
    public double Height => _chassis.CentreOfMassHeight;

    /// <summary>Adds a force in body axes at (x, y, z_p) from the centre of mass; power = Fx V_x + Fy V_y + Fz V_z.</summary>
    public void AddForce(double x, double y, double zp, double fx, double fy, double fz)
    {
        _fx += fx;
        _fy += fy;
        _fz += fz;
        _mz += (x * fy) - (y * fx);
        _my += (zp * fx) - (x * fz);
        _mx += (y * fz) - (zp * fy);
    }

    public void AddYawMoment(double moment) => _mz += moment;

    /// <summary>V_x = u - r y + z_p theta',  V_y = v + r x - z_p phi',  V_z = z' - theta' x + phi' y.</summary>
    public (double X, double Y, double Z) PointVelocity(double x, double y, double zp) =>
        (U - (R * y) + (zp * ThetaRate), V + (R * x) - (zp * PhiRate), ZRate - (ThetaRate * x) + (PhiRate * y));

    /// <summary>Commands, electrics, tyres and drives: everything that the robot does to itself in one step.</summary>
    public void Act(double t, double h)
    {
        _fx = _fy = _fz = _mx = _my = _mz = 0.0;
        Steer(t, h);
        Electrify(h);
        for (int i = 0; i < Wheels.Length; i++)
        {
            OracleWheel w = Wheels[i];
            double spin = Spin(i);
            Slip(w, spin);
            w.SetLoad(Z - (w.X * Theta) + (w.Y * Phi), ZRate - (w.X * ThetaRate) + (w.Y * PhiRate));
            w.Step(h, spin, FloorScale(w), _floor);
            AddForce(w.X, w.Y, -Height, w.ForceX, w.ForceY, w.Load);
        }
        foreach (OracleDrive d in Drives)
        {
            d.Step(h, RollingSpeed);
        }
        for (int i = 0; i < Wheels.Length; i++)
        {
            OracleWheel w = Wheels[i];
            if (w.Drive < 0 && !w.IsSkid)
            {
                double torque = (w.Radius * w.ForceX) + (w.RollingTorque * Math.Tanh(FreeSpin[i] / RollingSpeed));
                FreeSpin[i] -= h * torque / w.SpinInertia;
            }
        }
        if (_chassis.Downforce != 0.0)
        {
            AddForce(_chassis.DownforceX - _chassis.CentreOfMassX, _chassis.DownforceY - _chassis.CentreOfMassY, 0.0, 0.0, 0.0, -_chassis.Downforce);
        }
    }

    /// <summary>
    /// m(u' - r v) = Fx,  m(v' + r u) = Fy,  m z'' = Fz - m g,  Izz r' = Mz,  Iyy theta'' = My,  Ixx phi'' = Mx,
    /// then the places.
    /// </summary>
    public void Move(double h)
    {
        double m = _chassis.Mass;
        double c = Math.Cos(Psi);
        double s = Math.Sin(Psi);
        double du = (_fx / m) + (_gravityX * c) + (_gravityY * s) + (R * V);
        double dv = (_fy / m) - (_gravityX * s) + (_gravityY * c) - (R * U);
        U += h * du;
        V += h * dv;
        R += h * _mz / _yaw;
        ZRate += h * ((_fz / m) - _gravityZ);
        ThetaRate += h * _my / _pitch;
        PhiRate += h * _mx / _roll;

        X += h * ((U * c) - (V * s));
        Y += h * ((U * s) + (V * c));
        Psi += h * R;
        Z += h * ZRate;
        Theta += h * ThetaRate;
        Phi += h * PhiRate;
        for (int i = 0; i < Wheels.Length; i++)
        {
            Slip(Wheels[i], Spin(i));
            Wheels[i].MoveCarcass(h);
        }
    }

    public double Spin(int wheel) => Wheels[wheel].Drive < 0 ? FreeSpin[wheel] : Wheels[wheel].Ratio * Drives[Wheels[wheel].Drive].Speed;

    private double LargestCurrent(OracleMotor motor)
    {
        foreach (OracleController k in Controllers)
        {
            if (k.Has(motor))
            {
                return k.LargestCurrent(motor, Settings.Battery!);
            }
        }
        return 0.0;
    }

    /// <summary>w_x = u - r y - h theta' - omega R,  w_y = v + r x + h phi'.</summary>
    private void Slip(OracleWheel w, double spin)
    {
        (double vx, double vy, _) = PointVelocity(w.X, w.Y, -Height);
        w.RimX = vx - (spin * w.Radius);
        w.RimY = vy;
    }

    /// <summary>Left = throttle - turn, right = throttle + turn, both scaled down together; heading hold by a first-order lag.</summary>
    private void Steer(double t, double h)
    {
        DriverSettings driver = _manoeuvre.Driver;
        double throttle = 0.0;
        double turn = 0.0;
        double at = t - driver.ReactionDelay;
        CommandPoint before = new(0.0, 0.0, 0.0);
        foreach (CommandPoint p in _manoeuvre.Commands)
        {
            if (p.Time <= at)
            {
                throttle = p.Throttle;
                turn = p.Turn;
                before = p;
                continue;
            }
            if (p.Ramp)
            {
                double share = (at - before.Time) / (p.Time - before.Time);
                throttle = before.Throttle + (share * (p.Throttle - before.Throttle));
                turn = before.Turn + (share * (p.Turn - before.Turn));
            }
            break;
        }
        if (driver.HeadingHold != 0.0)
        {
            _bearing += h * (Psi - _manoeuvre.InitialHeading - _bearing) / driver.HeadingLag;
            turn -= driver.HeadingHold * _bearing;
        }
        double left = throttle - turn;
        double right = throttle + turn;
        double most = Math.Max(1.0, Math.Max(Math.Abs(left), Math.Abs(right)));
        foreach (OracleController k in Controllers)
        {
            k.Follow(h, (k.IsLeft ? left : right) / most);
        }
    }

    private void Electrify(double h)
    {
        if (Battery is null)
        {
            return;
        }
        foreach (OracleController k in Controllers)
        {
            k.Prepare();
        }
        Battery.Solve(Controllers);
        Battery.Discharge(h);
        foreach (OracleController k in Controllers)
        {
            k.Share();
            k.Heat(h, _floor.AirTemperature);
        }
        foreach (OracleDrive d in Drives)
        {
            foreach (OracleMotor m in d.Motors)
            {
                m.Heat(h, _floor.AirTemperature);
            }
        }
    }

    /// <summary>Friction multiple under the wheel: the last patch that covers it, with hard edges.</summary>
    private double FloorScale(OracleWheel w)
    {
        double scale = _floor.FrictionScale;
        if (_floor.Patches.Count == 0)
        {
            return scale;
        }
        double sign = _turned ? -1.0 : 1.0;
        double x = sign * (X + (Math.Cos(Psi) * w.X) - (Math.Sin(Psi) * w.Y));
        double y = sign * (Y + (Math.Sin(Psi) * w.X) + (Math.Cos(Psi) * w.Y));
        double patch = 1.0;
        foreach (FloorPatch p in _floor.Patches)
        {
            if (x >= p.MinX && x <= p.MaxX && y >= p.MinY && y <= p.MaxY)
            {
                patch = p.FrictionScale;
            }
        }
        return scale * patch;
    }

    /// <summary>
    /// Rest on the tyres: N_i = -kz (z - x theta + y phi), sum N = m g + D, no moment of N, of the tyres' hold against the
    /// slope (at z_p = -h) and of D. Wheels that would pull are left out and the three equations solved again.
    /// </summary>
    private void SetDown()
    {
        double c = Math.Cos(Psi);
        double s = Math.Sin(Psi);
        double holdX = -_chassis.Mass * ((_gravityX * c) + (_gravityY * s));
        double holdY = -_chassis.Mass * ((_gravityY * c) - (_gravityX * s));
        double dx = _chassis.DownforceX - _chassis.CentreOfMassX;
        double dy = _chassis.DownforceY - _chassis.CentreOfMassY;
        var touching = new bool[Wheels.Length];
        Array.Fill(touching, true);
        for (int pass = 0; pass < 8; pass++)
        {
            var a = new double[3, 4];
            a[0, 3] = (_chassis.Mass * _gravityZ) + _chassis.Downforce;
            a[1, 3] = (_chassis.Downforce * dx) - (Height * holdX);
            a[2, 3] = (_chassis.Downforce * dy) - (Height * holdY);
            for (int i = 0; i < Wheels.Length; i++)
            {
                if (!touching[i])
                {
                    continue;
                }
                OracleWheel w = Wheels[i];
                double[] arms = [1.0, w.X, w.Y];
                for (int row = 0; row < 3; row++)
                {
                    a[row, 0] -= w.Stiffness * arms[row];
                    a[row, 1] += w.Stiffness * arms[row] * w.X;
                    a[row, 2] -= w.Stiffness * arms[row] * w.Y;
                }
            }
            Eliminate(a);
            (Z, Theta, Phi) = (a[0, 3], a[1, 3], a[2, 3]);
            for (int i = 0; i < Wheels.Length; i++)
            {
                touching[i] = Z - (Wheels[i].X * Theta) + (Wheels[i].Y * Phi) < 0.0;
            }
        }
        if (holdX != 0.0 || holdY != 0.0)
        {
            Lean(CanHold(holdX) ? holdX : 0.0, holdY);
        }
    }

    /// <summary>
    /// On a slope: tyres start leaning, each with a force in proportion to its load; along x, with the gears, only if the
    /// gears can hold it without current. Loads are those of a robot held by its tyres in either case. The model as written does not
    /// say how a robot is set down: this is the engine's start, as its first sample shows it.
    /// </summary>
    private void Lean(double holdX, double holdY)
    {
        foreach (OracleWheel w in Wheels)
        {
            w.SetLoad(Z - (w.X * Theta) + (w.Y * Phi), 0.0);
        }
        double sum = Wheels.Sum(w => w.Load);
        foreach (OracleWheel w in Wheels)
        {
            w.Lean(holdX * w.Load / sum, holdY * w.Load / sum);
        }
        foreach (OracleDrive d in Drives)
        {
            d.Lean();
        }
    }

    private static void Eliminate(double[,] a)
    {
        for (int column = 0; column < 3; column++)
        {
            int pivot = column;
            for (int row = column + 1; row < 3; row++)
            {
                pivot = Math.Abs(a[row, column]) > Math.Abs(a[pivot, column]) ? row : pivot;
            }
            for (int k = 0; k < 4; k++)
            {
                (a[column, k], a[pivot, k]) = (a[pivot, k], a[column, k]);
            }
            double scale = a[column, column];
            for (int k = 0; k < 4; k++)
            {
                a[column, k] /= scale;
            }
            for (int row = 0; row < 3; row++)
            {
                double factor = row == column ? 0.0 : a[row, column];
                for (int k = 0; k < 4; k++)
                {
                    a[row, k] -= factor * a[column, k];
                }
            }
        }
    }

    private bool CanHold(double force)
    {
        double load = Wheels.Length;
        bool locked = Settings.Controllers.All(k => k.ZeroCommand == ZeroCommand.Locked);
        return Drives.All(d => d.Motors.Length > 0 && d.HoldLimit(locked) > d.Wheels.Sum(w => w.Radius) * Math.Abs(force) / load);
    }

    /// <summary>Rolling start: wheels at u / R, v_a = w_a and q = 0.</summary>
    private void StartRolling(double speed)
    {
        U = speed;
        foreach (OracleDrive d in Drives)
        {
            d.Speed = d.Wheels.Length > 0 ? speed / d.Wheels[0].Radius / d.Ratios[0] : 0.0;
        }
        for (int i = 0; i < Wheels.Length; i++)
        {
            if (Wheels[i].Drive < 0 && !Wheels[i].IsSkid)
            {
                FreeSpin[i] = speed / Wheels[i].Radius;
            }
            Slip(Wheels[i], Spin(i));
            Wheels[i].TreadX = Wheels[i].RimX;
            Wheels[i].TreadY = Wheels[i].RimY;
        }
    }
}
