using PushSim.Powertrain;

namespace PushSim.Simulation;

/// <content>The state that it starts in.</content>
internal sealed partial class RobotSystem
{
    // Share of its grip or hold that a robot set down on a slope may take up at once [1].
    private const double LeaningShare = 0.99;

    /// <summary>State at the start: standing on its wheels, or rolling at the given speed.</summary>
    public double[] InitialState()
    {
        double[] y = new double[Layout.Count];
        ManoeuvreSettings m = _scenario.Manoeuvre;
        RobotSettings robot = _scenario.Robot;
        y[StateLayout.X] = Start.X;
        y[StateLayout.Y] = Start.Y;
        y[StateLayout.Heading] = m.InitialHeading;
        y[StateLayout.Heave] = Static.Heave;
        y[StateLayout.Pitch] = Static.Pitch;
        y[StateLayout.Roll] = Static.Roll;
        y[StateLayout.U] = m.InitialSpeed;
        for (int i = 0; i < robot.Wheels.Count; i++)
        {
            // a moving start: tread with the rim; a driven wheel rolls (w = 0), a skid is dragged (w = u)
            y[Layout.Tread(i)] = Equations.Kinds[i].Shape.Drive >= 0 ? 0.0 : m.InitialSpeed;
        }

        for (int d = 0; d < robot.Drives.Count; d++)
        {
            (int wheel, double ratio) = robot.Drives[d].Wheels[0];
            y[Layout.FirstDrive + d] = m.InitialSpeed / (ratio * robot.Wheels[wheel].Radius);
        }

        foreach (GivenSpeed given in _scenario.GivenSpeeds)
        {
            y[Layout.FirstDrive + given.Drive] = given.At(0.0);
        }

        if (m.InitialSpeed == 0.0)
        {
            LeanOnTheSlope(y);
        }

        for (int i = 0; i < robot.Wheels.Count; i++)
        {
            if (Layout.Fouling[i] >= 0)
            {
                y[Layout.Fouling[i]] = robot.Wheels[i].InitialFouling;
            }
        }

        double air = _scenario.Floor.AirTemperature;
        foreach (int i in Layout.MotorHeat.Where(i => i >= 0))
        {
            y[i] = air;
            y[i + 1] = air;
        }

        foreach (int i in Layout.ControllerHeat.Append(Layout.BatteryHeat).Where(i => i >= 0))
        {
            y[i] = air;
        }

        if (Layout.Anchor >= 0)
        {
            y[Layout.Anchor] = _scenario.Tether!.AnchorX;
        }

        return y;
    }

    // A robot set down gently: wheels whose drives are held at the start carry its weight along the slope, each by its load,
    // tyre body, bristle and gear already leaning. Where that would be more than they hold it starts unloaded, and slides.
    private void LeanOnTheSlope(double[] y)
    {
        (double gx, double gy, double _) = ModelBuilder.Gravity(_scenario.Floor);
        (double sine, double cosine) = Math.SinCos(_scenario.Manoeuvre.InitialHeading);
        double mass = _scenario.Robot.Chassis.Mass;
        double along = -mass * ((cosine * gx) + (sine * gy));
        double across = -mass * ((cosine * gy) - (sine * gx));
        EnterSegment(0);
        bool[] holds = [.. Equations.Kinds.Select(w => w.Shape.Drive < 0 || Equations.Commands.Drives[w.Shape.Drive].IsHeld.Value > 0.5)];
        double all = Static.Loads.Sum();
        double held = Static.Loads.Where((_, i) => holds[i]).Sum();
        double[] torque = new double[Equations.Drives.Length];
        double[] leaning = (double[])y.Clone();
        for (int i = 0; i < holds.Length; i++)
        {
            ref readonly Tyres.WheelParameters<R1> p = ref Equations.Wheels[i];
            double load = Static.Loads[i];
            double fx = holds[i] && held > 0.0 ? along * load / held : 0.0;
            double fy = across * load / all;
            double grip = load * _scenario.Floor.FrictionScale * (p.KineticFriction.Value + p.FrictionDrop.Value);
            if (double.Hypot(fx, fy / p.LateralRatio.Value) > LeaningShare * grip)
            {
                return;
            }

            if (load > 0.0)
            {
                leaning[Layout.Deflection(i)] = fx / p.BodyStiffness.Value;
                leaning[Layout.Deflection(i) + 1] = fy / p.LateralRatio.Value / p.BodyStiffness.Value;
                leaning[Layout.Bristle(i)] = -fx / (load * p.Sigma0.Value);
                leaning[Layout.Bristle(i) + 1] = -fy / p.LateralRatio.Value / (load * p.Sigma0.Value);
            }

            int drive = Equations.Kinds[i].Shape.Drive;
            if (drive >= 0)
            {
                torque[drive] -= p.DriveRatio.Value * p.Radius.Value * fx;
            }
        }

        for (int d = 0; d < torque.Length; d++)
        {
            ref readonly DriveParameters<R1> p = ref Equations.Drives[d];
            double capacity = p.DryFriction.Value + p.HoldTorque.Value;
            if (Math.Abs(torque[d]) > LeaningShare * capacity)
            {
                return;
            }

            if (Equations.DriveShapes[d].BristleIndex >= 0 && torque[d] != 0.0)
            {
                leaning[Layout.DriveBristle[d]] = torque[d] / capacity * p.WindUp.Value;
            }
        }

        leaning.CopyTo(y, 0);
    }
}
