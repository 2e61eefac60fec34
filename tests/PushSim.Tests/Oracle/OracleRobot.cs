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
    private Vector _force, _moment;

    // columns: the body's axes in the floor's
    private Vector _forward = new(1.0, 0.0, 0.0), _left = new(0.0, 1.0, 0.0), _up = new(0.0, 0.0, 1.0);
    private Vector _velocity;

    // rate of turning about the body's own axes
    private Vector _turning;
    private double _psi;
    private double _bearing;
    private readonly OracleDriver _driver;

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
        _driver = new OracleDriver(manoeuvre.Driver);
        SetDown();
        Tilt(Psi, Theta, Phi);
        StartRolling(manoeuvre.InitialSpeed);
    }

    public RobotSettings Settings { get; }

    /// <summary>Whom its driver looks at, in a floor frame turned by half a turn; null alone.</summary>
    public OracleRobot? Other { get; set; }
    public OracleWheel[] Wheels { get; }
    public OracleDrive[] Drives { get; }
    public OracleController[] Controllers { get; }
    public OracleBattery? Battery { get; }

    /// <summary>Spin of wheels that no drive turns.</summary>
    public double[] FreeSpin { get; }

    /// <summary>Place of the centre of mass, z from its height at rest on untouched tyres [m]; sines of pitch and roll [1].</summary>
    public double X, Y, Z, Theta, Phi;
    public double Height => _chassis.CentreOfMassHeight;
    public double U => (Math.Cos(_psi) * _velocity.X) + (Math.Sin(_psi) * _velocity.Y);
    public double V => (Math.Cos(_psi) * _velocity.Y) - (Math.Sin(_psi) * _velocity.X);
    public double R => _turning.Z;

    /// <summary>Heading, counted through whole turns [rad]; to set it keeps the tilt's axes with the heading.</summary>
    public double Psi
    {
        get => _psi;
        set
        {
            _psi = value;
            Tilt(value, Theta, Phi);
        }
    }

    /// <summary>A point of the body in the own floor frame.</summary>
    public Vector Point(Vector own) => Centre + Direction(own);

    /// <summary>A direction of the body in the own floor frame.</summary>
    public Vector Direction(Vector own) => (own.X * _forward) + (own.Y * _left) + (own.Z * _up);

    /// <summary>Velocity of the body's point that now is at a floor place.</summary>
    public Vector Velocity(Vector at) => _velocity + Direction(_turning).Cross(at - Centre);

    /// <summary>A force at a floor place, floor axes.</summary>
    public void Push(Vector at, Vector force)
    {
        _force += force;
        _moment += (at - Centre).Cross(force);
    }

    private Vector Centre => new(X, Y, Height + Z);

    /// <summary>Commands, electrics, tyres and drives: everything that the robot does to itself in one step.</summary>
    public void Act(double t, double h)
    {
        (_force, _moment) = (default, default);
        Steer(t, h);
        Electrify(h);
        for (int i = 0; i < Wheels.Length; i++)
        {
            OracleWheel w = Wheels[i];
            double spin = Spin(i);
            (Vector at, Vector along, Vector across) = Touch(w);
            Slip(w, spin);
            w.SetLoad(at.Z, Velocity(at).Z);
            w.Step(h, spin, FloorScale(at), _floor);
            Push(at, (w.ForceX * along) + (w.ForceY * across) + new Vector(0.0, 0.0, w.Load));
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
            Vector under = Point(new Vector(_chassis.DownforceX - _chassis.CentreOfMassX, _chassis.DownforceY - _chassis.CentreOfMassY, -Height));
            double gap = _chassis.DownforceGap is > 0.0 and double g ? 1.0 + (Math.Max(0.0, under.Z) / g) : 1.0;
            Push(under, new Vector(0.0, 0.0, -_chassis.Downforce / (gap * gap)));
        }
    }

    /// <summary>m v' = F + m g, and about the body's axes I w' = M - w x I w; then the places and the axes, turned about w.</summary>
    public void Move(double h)
    {
        _velocity += h * (((1.0 / _chassis.Mass) * _force) + new Vector(_gravityX, _gravityY, -_gravityZ));
        Vector moment = new(_moment.Dot(_forward), _moment.Dot(_left), _moment.Dot(_up));
        Vector spin = new(_roll * _turning.X, _pitch * _turning.Y, _yaw * _turning.Z);
        Vector net = moment - _turning.Cross(spin);
        _turning += new Vector(h * net.X / _roll, h * net.Y / _pitch, h * net.Z / _yaw);

        X += h * _velocity.X;
        Y += h * _velocity.Y;
        Z += h * _velocity.Z;
        Turn(h);
        for (int i = 0; i < Wheels.Length; i++)
        {
            Slip(Wheels[i], Spin(i));
            Wheels[i].MoveCarcass(h);
        }
    }

    // Rodrigues' rotation of the axes by h w, then the axes made square again
    private void Turn(double h)
    {
        Vector w = h * Direction(_turning);
        double angle = w.Length;
        if (angle > 0.0)
        {
            Vector axis = (1.0 / angle) * w;
            (double s, double c) = (Math.Sin(angle), Math.Cos(angle));
            Vector Turned(Vector a) => (c * a) + (s * axis.Cross(a)) + ((1.0 - c) * axis.Dot(a) * axis);
            (_forward, _left) = (Turned(_forward), Turned(_left));
            _forward = (1.0 / _forward.Length) * _forward;
            _left -= _forward.Dot(_left) * _forward;
            _left = (1.0 / _left.Length) * _left;
            _up = _forward.Cross(_left);
        }
        // the heading is the part about the vertical of the rotation: tan psi = (r10 - r01)/(r00 + r11)
        double psi = Math.Atan2(_forward.Y - _left.X, _forward.X + _left.Y);
        _psi += Math.IEEERemainder(psi - _psi, 2.0 * Math.PI);
        (Theta, Phi) = (-_forward.Z, _left.Z);
    }

    // Heading after a tilt about a level axis, which leaves the body's forward axis at -theta and its left one at phi above the floor.
    private void Tilt(double psi, double theta, double phi)
    {
        double sine = Math.Sqrt((theta * theta) + (phi * phi));
        double angle = Math.Asin(sine);
        (double ax, double ay) = sine > 0.0 ? (phi / sine, theta / sine) : (1.0, 0.0);
        (double s, double c) = (Math.Sin(angle), Math.Cos(angle));
        Vector Of(Vector a)
        {
            Vector axis = new(ax, ay, 0.0);
            Vector t = (c * a) + (s * axis.Cross(a)) + ((1.0 - c) * axis.Dot(a) * axis);
            return new((Math.Cos(psi) * t.X) - (Math.Sin(psi) * t.Y), (Math.Sin(psi) * t.X) + (Math.Cos(psi) * t.Y), t.Z);
        }
        (_forward, _left, _up) = (Of(new(1.0, 0.0, 0.0)), Of(new(0.0, 1.0, 0.0)), Of(new(0.0, 0.0, 1.0)));
    }

    public double Spin(int wheel) => Wheels[wheel].Drive < 0 ? FreeSpin[wheel] : Wheels[wheel].Ratio * Drives[Wheels[wheel].Drive].Speed;

    /// <summary>Lets a moment about a wheel's axle act for a step; a skid never turns.</summary>
    public void TurnWheel(int wheel, double h, double torque)
    {
        OracleWheel w = Wheels[wheel];
        if (w.Drive >= 0)
        {
            Drives[w.Drive].Speed += h * w.Ratio * torque / Drives[w.Drive].Inertia;
        }
        else if (!w.IsSkid)
        {
            FreeSpin[wheel] += h * torque / w.SpinInertia;
        }
    }

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

    /// <summary>The rim's lowest point, a radius from the hub in the wheel's plane, the way along which it rolls, and across.</summary>
    private (Vector At, Vector Along, Vector Across) Touch(OracleWheel w)
    {
        Vector n = new(0.0, 0.0, 1.0);
        Vector hub = Point(new Vector(w.X, w.Y, w.Radius + w.Rise - Height));
        Vector down = n - (n.Dot(_left) * _left);
        Vector along = _left.Cross(n);
        along = (1.0 / along.Length) * along;
        return (hub - ((w.Radius / down.Length) * down), along, n.Cross(along));
    }

    /// <summary>Speed of the chassis over the floor at the touching point, less the rim's.</summary>
    private void Slip(OracleWheel w, double spin)
    {
        (Vector at, Vector along, Vector across) = Touch(w);
        Vector v = Velocity(at);
        w.RimX = v.Dot(along) - (spin * w.Radius);
        w.RimY = v.Dot(across);
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
        bool drives = throttle != 0.0 || turn != 0.0;
        throttle *= _driver.Throttle(h, drives, U);
        turn += Other is { } other ? _driver.Turn(h, drives, _psi, -other.X - X, -other.Y - Y) : 0.0;
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
    private double FloorScale(Vector at)
    {
        double scale = _floor.FrictionScale;
        if (_floor.Patches.Count == 0)
        {
            return scale;
        }
        double sign = _turned ? -1.0 : 1.0;
        double x = sign * at.X;
        double y = sign * at.Y;
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
    /// Rest on the tyres: N_i = -kz (z + rise_i - x theta + y phi), sum N = m g + D, no moment of N, of the tyres' hold against the
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
                    a[row, 3] += w.Stiffness * arms[row] * w.Rise;
                    a[row, 0] -= w.Stiffness * arms[row];
                    a[row, 1] += w.Stiffness * arms[row] * w.X;
                    a[row, 2] -= w.Stiffness * arms[row] * w.Y;
                }
            }
            Eliminate(a);
            (Z, Theta, Phi) = (a[0, 3], a[1, 3], a[2, 3]);
            for (int i = 0; i < Wheels.Length; i++)
            {
                touching[i] = Wheels[i].Rise + Z - (Wheels[i].X * Theta) + (Wheels[i].Y * Phi) < 0.0;
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
            w.SetLoad(w.Rise + Z - (w.X * Theta) + (w.Y * Phi), 0.0);
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
        _velocity = speed * new Vector(Math.Cos(_psi), Math.Sin(_psi), 0.0);
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
