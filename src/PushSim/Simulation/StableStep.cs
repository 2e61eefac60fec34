namespace PushSim.Simulation;

/// <summary>Longest step at which a robot at rest is stable. Without it the error control finds the limit by trying: steps grow past
/// it, rounding grows to the size of the tolerance, the step is cut, and so on; a robot that should stand still then shakes
/// by micrometres and creeps down a slope. The tyres' own rings are implicit; of a tyre only what it does to rim and body counts, body and bristles in series.</summary>
internal static class StableStep
{
    // h |lambda| at which a robot still rests [1]: at 2 movement stayed under 1e-15 in 40 random robots, at 3 most of them shook.
    private const double Reach = 2.0;

    /// <summary>Bound on the step from the fastest tyre, drive or body mode at the static loads [s].</summary>
    public static double Of(RobotEquations<R1> eq, double[] loads) => Reach / FastestOf(eq, loads).Rate;

    /// <summary>The fastest mode at the static loads and the part that it hangs on.</summary>
    public static FastMode FastestOf(RobotEquations<R1> eq, double[] loads)
    {
        FastMode fastest = default;
        double body = 0.0;
        double heave = 0.0;
        for (int i = 0; i < eq.Wheels.Length; i++)
        {
            ref readonly Tyres.WheelParameters<R1> p = ref eq.Wheels[i];
            double along = (p.X * p.X).Value;
            double across = (p.Y * p.Y).Value;
            double level = (eq.Body.Height * eq.Body.Height).Value;
            int drive = eq.Kinds[i].Shape.Drive;
            double rim = drive < 0 ? 0.0
                : (p.Radius * p.Radius * p.DriveRatio * p.DriveRatio * eq.Drives[drive].InverseInertia).Value;
            body = Math.Max(body, eq.Body.InverseMass.Value + (eq.Body.InverseYaw.Value * (along + across))
                + (eq.Body.InversePitch.Value * level) + (eq.Body.InverseRoll.Value * level));
            heave += p.VerticalStiffness.Value
                * (eq.Body.InverseMass.Value + (eq.Body.InversePitch.Value * along) + (eq.Body.InverseRoll.Value * across));
            double give = rim + (eq.Wheels.Length * body);
            double stiffness = InSeries(p.BodyStiffness.Value, loads[i] * p.Sigma0.Value);
            double damping = InSeries(p.BodyDamping.Value, loads[i] * (p.Sigma1.Value + p.Sigma2.Value));
            fastest = fastest.Or(Fastest(stiffness * give, damping * give), FastPart.Tyre, i);
        }

        for (int d = 0; d < eq.Drives.Length; d++)
        {
            ref readonly Powertrain.DriveParameters<R1> p = ref eq.Drives[d];
            double friction = ((p.DryFriction + p.HoldTorque) * p.InverseWindUp * p.InverseInertia).Value;
            double damping = (friction * p.DampingTime.Value) + (p.Viscous * p.InverseInertia).Value;
            for (int m = 0; m < eq.Motors.Length; m++)
            {
                ref readonly Powertrain.MotorParameters<R1> q = ref eq.Motors[m];
                damping += eq.MotorShapes[m].Drive == d ? (q.Constant * q.Constant / q.Resistance * p.InverseInertia).Value : 0.0;
            }

            fastest = fastest.Or(Fastest(friction, damping), FastPart.Drive, d);
        }

        fastest = fastest.Or(Math.Sqrt(heave), FastPart.Springs, 0);
        if (eq.Tether is not null)
        {
            fastest = fastest.Or(Math.Sqrt(eq.Tether.Numbers.Stiffness.Value * body), FastPart.Tether, 0);
        }

        return fastest;
    }

    private static double InSeries(double a, double b) => a + b > 0.0 ? a * b / (a + b) : 0.0;

    // Larger root of l^2 + damping l + stiffness by magnitude [1/s].
    private static double Fastest(double stiffness, double damping)
    {
        double root = (0.25 * damping * damping) - stiffness;
        return root <= 0.0 ? Math.Sqrt(stiffness) : (0.5 * damping) + Math.Sqrt(root);
    }
}
