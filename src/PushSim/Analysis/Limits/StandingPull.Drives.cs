namespace PushSim.Analysis.Limits;

/// <content>What a drive gives and its wheels take at given loads, and how fast it spins then.</content>
internal sealed partial class StandingPull
{
    // Spin speeds that are looked at for the one at which torque and friction balance.
    private const int ScanPoints = 24;
    private const double SlowestShare = 1e-4;
    private const int Bisections = 18;

    // Below this rim speed [m/s] a drive counts as stalled.
    private const double Standstill = 1e-7;

    private static R1[] Torques(LimitModel<R1> model, double[] omega)
    {
        R1[] spin = [.. omega.Select(w => (R1)w)];
        R1[] torque = new R1[omega.Length];
        model.Torques(spin, torque);
        return torque;
    }

    // F of one wheel per torque of its stalled drive
    private static double Share(LimitModel<R1> model, R1[] load, int d, int wheel)
    {
        double sum = 0.0;
        foreach (int i in model.WheelsOf[d])
        {
            sum += load[i].Value * model.Wheels[i].DriveRatio.Value * model.Wheels[i].Radius.Value;
        }

        return sum > 0.0 ? load[wheel].Value / sum : 0.0;
    }

    private static T Sliding<T>(LimitModel<T> model, T load, int wheel, T omega)
        where T : struct, IReal<T>
    {
        T surface = model.Wheels[wheel].DriveRatio * model.Wheels[wheel].Radius * omega;
        return SteadyTyre.Force(model.Wheels[wheel], model.Kinds[wheel], model.FloorOf[wheel], load, surface, surface);
    }

    private static double Resistance(LimitModel<R1> model, R1[] load, int d, double omega)
    {
        double sum = 0.0;
        foreach (int i in model.WheelsOf[d])
        {
            double lever = model.Wheels[i].DriveRatio.Value * model.Wheels[i].Radius.Value;
            double spin = model.Wheels[i].DriveRatio.Value * omega;
            double force = omega > 0.0 ? Sliding(model, load[i], i, omega).Value : SteadyTyre.Peak(model.Wheels[i], model.Kinds[i], model.FloorOf[i], load[i]).Value;
            sum += lever * (force + (model.Wheels[i].RollingResistance.Value * load[i].Value * Math.Tanh(spin * model.Wheels[i].InverseRollingSpeed.Value)));
        }

        return sum;
    }

    private static bool BreaksAway(LimitModel<R1> model, R1[] load, double[] omega, int d)
    {
        double kept = omega[d];
        omega[d] = 0.0;
        bool breaks = Torques(model, omega)[d].Value > Resistance(model, load, d, 0.0);
        omega[d] = kept;
        return breaks;
    }

    // The speed of one drive, the others held
    private static double Spin(LimitModel<R1> model, R1[] load, double[] omega, int d)
    {
        if (!BreaksAway(model, load, omega, d))
        {
            return 0.0;
        }

        double least = Standstill / model.Lever(d).Value;
        double most = FreeSpeed(model, d);
        double low = least;
        double high = most;
        for (int k = 0; k < ScanPoints; k++)
        {
            double at = most * Math.Pow(SlowestShare, 1.0 - ((k + 1.0) / ScanPoints));
            if (Balance(at) < 0.0)
            {
                high = at;
                break;
            }

            low = at;
        }

        for (int k = 0; k < Bisections; k++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Balance(middle) > 0.0 ? (middle, high) : (low, middle);
        }

        return omega[d] = 0.5 * (low + high);

        double Balance(double at)
        {
            omega[d] = at;
            return Torques(model, omega)[d].Value - Resistance(model, load, d, at);
        }
    }

    private static double FreeSpeed(LimitModel<R1> model, int d)
    {
        double most = 0.0;
        for (int m = 0; m < model.Motors.Length; m++)
        {
            most = model.MotorShapes[m].Drive == d ? Math.Max(most, 1.1 * model.OpenCircuit.Value / model.Motors[m].Constant.Value) : most;
        }

        return most;
    }

    private static double Force(LimitModel<R1> model, R1[] load, double[] omega, int d)
    {
        if (!model.IsDriven[d])
        {
            return 0.0;
        }

        // on the way a drive that will spin may still count as stalled: no wheel gives more than it holds
        double torque = omega[d] > 0.0 ? 0.0 : Math.Clamp(Torques(model, omega)[d].Value, 0.0, Resistance(model, load, d, 0.0));
        double sum = 0.0;
        foreach (int i in model.WheelsOf[d])
        {
            sum += omega[d] > 0.0 ? Sliding(model, load[i], i, omega[d]).Value : Share(model, load, d, i) * torque;
        }

        return sum;
    }

    // Skids creep forward and hold against it.
    private static T Drag<T>(LimitModel<T> model, ReadOnlySpan<T> load)
        where T : struct, IReal<T>
    {
        T sum = 0.0;
        for (int i = 0; i < load.Length; i++)
        {
            if (model.Kinds[i].Shape.Drive < 0)
            {
                sum = sum - SteadyTyre.Peak(model.Wheels[i], model.Kinds[i], model.FloorOf[i], load[i]);
            }
        }

        return sum;
    }

    private static double Drag(LimitModel<R1> model, R1[] load) => Drag<R1>(model, load).Value;
}
