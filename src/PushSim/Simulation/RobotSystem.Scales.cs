namespace PushSim.Simulation;

/// <content>What is typical of its states, and how exact each is wanted.</content>
internal sealed partial class RobotSystem
{
    // 1 left the energy balance of a robot that only rocks on its tyres open by 2e-3; 0.1 costs a tenth more work [1].
    public const double ShareOfTypical = 0.1;

    // How much wider the error of deflections, treads and bristles is judged [1], and what is typical of the deflections of tyres that hardly give [m]. Their errors
    // die out within a step; what they do to the robot counts in its speeds. A printed tyre's bristle else asks for steps of nanoseconds wherever it touches down.
    private const double StiffShare = 10.0;
    private const double LeastDeflection = 1e-4;

    /// <summary>Absolute tolerance of each component at a relative tolerance: a share of what is typical of that quantity, in its own
    /// unit; more of it for the stiff states of tyres, whose errors die out. Quadratures are out of the norm.</summary>
    public double[] AbsoluteTolerances(double relative)
    {
        double[] a = Typical();
        for (int i = 0; i < a.Length; i++)
        {
            bool isLength = i >= Layout.Deflection(0) && i < Layout.AfterTyres && (i < Layout.Tread(0) || i >= Layout.Bristle(0));
            bool isTread = i >= Layout.Tread(0) && i < Layout.Bristle(0);
            double typical = isLength ? StiffShare * Math.Max(LeastDeflection, a[i]) : isTread ? StiffShare * a[i] : a[i];
            a[i] = relative * ShareOfTypical * typical;
        }

        return a;
    }

    /// <summary>What is typical of each component, in its own unit; infinite for quadratures.</summary>
    public double[] Typical()
    {
        double[] a = new double[Layout.Count];
        Array.Fill(a, double.PositiveInfinity);
        Set(a, StateLayout.X, 2, 0.3);
        Set(a, StateLayout.Heading, 1, 1.0);
        Set(a, StateLayout.U, 2, 0.3);
        Set(a, StateLayout.YawRate, 1, 2.0);
        Set(a, StateLayout.Heave, 1, 1e-3);
        Set(a, StateLayout.Pitch, 2, 1e-2);
        Set(a, StateLayout.HeaveRate, 1, 0.1);
        Set(a, StateLayout.PitchRate, 2, 1.0);
        for (int i = 0; i < Equations.Wheels.Length; i++)
        {
            TyreScales(i, out double deflection, out double bristle);
            Set(a, Layout.Deflection(i), 2, deflection);
            Set(a, Layout.Tread(i), 2, 0.3);
            Set(a, Layout.Bristle(i), 2, bristle);
            if (Layout.Spin[i] is >= 0 and int turning)
            {
                Set(a, Layout.Deflection(0) + turning, 1, deflection);
                Set(a, Layout.Tread(0) + turning, 1, 0.3);
                Set(a, Layout.Bristle(0) + turning, 1, bristle);
            }

            if (Equations.Kinds[i].Shape.Drive >= 0)
            {
                double spin = 0.3 / (Equations.Wheels[i].Radius.Value * Math.Abs(Equations.Wheels[i].DriveRatio.Value));
                Set(a, Layout.FirstDrive + Equations.Kinds[i].Shape.Drive, 1, spin);
            }

            Set(a, Layout.Fouling[i], 1, 1.0);
        }

        for (int d = 0; d < Layout.DriveBristle.Count; d++)
        {
            Set(a, Layout.DriveBristle[d], 1, Equations.Drives[d].WindUp.Value);
        }

        Set(a, Layout.FloorBristle, Contact.ContactFriction.Bristles, _scenario.Robot.OutlineOrBox.Underside.FrictionDeflection);
        Set(a, Layout.Charge, 1, 100.0);
        Set(a, Layout.SlowVoltage, 1, 0.1);
        Set(a, Layout.BatteryHeat, 1, 20.0);
        Set(a, Layout.Anchor, 1, 0.3);
        Set(a, Layout.HeadingHold, 1, 0.1);
        Set(a, Layout.Steering, DriverEquations<R1>.SteeringStates, 0.1);
        Set(a, Layout.Easing, DriverEquations<R1>.EasingStates, 0.1);
        foreach (int i in Layout.MotorHeat)
        {
            Set(a, i, 2, 20.0);
        }

        foreach (int i in Layout.ControllerHeat)
        {
            Set(a, i, 1, 20.0);
        }

        return a;

        void Set(double[] target, int first, int count, double typical)
        {
            for (int i = first; first >= 0 && i < first + count; i++)
            {
                target[i] = typical;
            }
        }
    }

    private void TyreScales(int i, out double deflection, out double bristle)
    {
        double friction = _scenario.Robot.Wheels[i].Tyre.StaticFriction;
        deflection = friction * Math.Max(Static.Loads[i], 0.1) / Equations.Wheels[i].BodyStiffness.Value;
        bristle = friction / Equations.Wheels[i].Sigma0.Value;
    }
}
