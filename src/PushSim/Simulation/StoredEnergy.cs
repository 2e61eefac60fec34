namespace PushSim.Simulation;

/// <summary>Energies that a state holds [J].</summary>
/// <param name="Kinetic">Body, treads, rotors and wheels.</param>
/// <param name="Spring">Tyre bodies, vertical springs, tether.</param>
/// <param name="Gravity">Gravity and downforce, from the start's level.</param>
internal readonly record struct StoredEnergy(double Kinetic, double Spring, double Gravity)
{
    /// <summary>Both together.</summary>
    public static StoredEnergy operator +(StoredEnergy a, StoredEnergy b) => new(a.Kinetic + b.Kinetic, a.Spring + b.Spring, a.Gravity + b.Gravity);

    /// <summary>Energies of a state; the equations must just have been evaluated there (for the tether's stretch).</summary>
    /// <param name="scenario">The robot's scenario.</param>
    /// <param name="eq">Its equations.</param>
    /// <param name="y">Its explicit states.</param>
    /// <param name="z">Its implicit states.</param>
    public static StoredEnergy Of(ScenarioSettings scenario, RobotEquations<R1> eq, ReadOnlySpan<double> y, ReadOnlySpan<double> z)
    {
        (double roll, double pitch, double yaw) = ModelBuilder.Inertia(scenario.Robot.Chassis);
        double m = eq.Body.Mass.Value;
        double kinetic = 0.5 * ((m * (Square(y[StateLayout.U]) + Square(y[StateLayout.V]) + Square(y[StateLayout.HeaveRate])))
            + (yaw * Square(y[StateLayout.YawRate])) + (pitch * Square(y[StateLayout.PitchRate])) + (roll * Square(y[StateLayout.RollRate])));
        double spring = 0.0;
        double centre = eq.Body.Height.Value + y[StateLayout.Heave];
        Chassis.Attitude<R1> attitude = default;
        attitude.Set(y[StateLayout.Roll], y[StateLayout.Pitch]);
        Tyres.WheelPlace<R1> place = default;
        for (int i = 0; i < eq.Wheels.Length; i++)
        {
            int q = eq.Layout.Deflection(i) - eq.Layout.ExplicitCount;
            int v = eq.Layout.Tread(i) - eq.Layout.ExplicitCount;
            ref readonly Tyres.WheelParameters<R1> p = ref eq.Wheels[i];
            spring += 0.5 * p.BodyStiffness.Value * (Square(z[q]) + Square(z[q + 1]));
            kinetic += 0.5 * p.TreadMass.Value * (Square(z[v]) + Square(z[v + 1]));
            int spin = eq.Kinds[i].Shape.SpinIndex;
            if (spin >= 0)
            {
                spring += 0.5 * p.BodyStiffness.Value * Square(z[spin]);
                kinetic += 0.5 * p.TreadMass.Value * Square(z[eq.Layout.Block + spin]);
            }

            place.Set(p, attitude, default, centre);
            spring += 0.5 * p.VerticalStiffness.Value * Square(Math.Min(0.0, place.Height.Value));
        }

        for (int d = 0; d < eq.Drives.Length; d++)
        {
            kinetic += 0.5 * eq.Drives[d].Inertia.Value * Square(y[eq.Layout.FirstDrive + d]);
        }

        if (eq.Tether is not null)
        {
            spring += 0.5 * eq.Tether.Numbers.Stiffness.Value * Square(Math.Max(0.0, eq.Tether.Stretch.Value));
        }

        attitude.ToHeading(eq.Body.DownforceX, eq.Body.DownforceY, -eq.Body.Height, out _, out _, out R1 below);

        // integral of D/(1 + x/L)^2 from 0 to the rise; below the floor the force stays
        double rise = centre + below.Value;
        double downforce = eq.Body.Downforce.Value * rise / (1.0 + (Math.Max(0.0, rise) * eq.Body.InverseDownforceGap.Value));
        double gravity = (m * ((eq.Body.GravityZ.Value * y[StateLayout.Heave]) - (eq.Body.GravityX.Value * y[StateLayout.X]) - (eq.Body.GravityY.Value * y[StateLayout.Y])))
            + downforce;
        return new StoredEnergy(kinetic, spring, gravity);
    }

    private static double Square(double x) => x * x;
}
