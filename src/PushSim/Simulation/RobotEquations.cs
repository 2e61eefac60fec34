using System.Runtime.CompilerServices;
using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>The right-hand side of one robot on a floor, with its tether: body, wheels, powertrain, slow states and ledger. Written
/// once over a number type. After an evaluation the work arrays hold its forces, currents and powers.
/// <code>
///   m (u' - psi' v) = F_x,  m (v' + psi' u) = F_y,  m z'' = F_z - m g_z       in the heading frame, which turns by psi' (<see cref="Attitude{T}"/>)
///   I w' + w x I w = M                                                        in body axes, I diagonal
///   I omega' = sum(Kt G i - visc G^2 omega) - T_f - sum ratio (R F_x + crr N R tanh(omega_i/omega_s))
/// </code>
/// Left out: products of inertia, pitch reaction and gyroscopic moments of spinning parts, backlash.</summary>
internal sealed partial class RobotEquations<T> : INumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Width over which the friction of a patch edge blends, about a contact length [m].</summary>
    private const double EdgeWidth = 0.004;

    public required StateLayout Layout { get; init; }

    public required WheelParameters<T>[] Wheels { get; init; }

    /// <summary>What kinds of wheels these are.</summary>
    public required WheelKind<T>[] Kinds { get; init; }

    public required DriveParameters<T>[] Drives { get; init; }

    public required DriveShape[] DriveShapes { get; init; }

    public required MotorParameters<T>[] Motors { get; init; }

    public required MotorShape[] MotorShapes { get; init; }

    public required ControllerParameters<T>[] Controllers { get; init; }

    public required ControllerShape[] ControllerShapes { get; init; }

    public required BatteryEquations<T>? Battery { get; init; }

    /// <summary>Whether the ledger's integrals are wanted; nothing else hangs on them.</summary>
    public bool HasLedger { get; init; } = true;

    public required TetherEquations<T>? Tether { get; init; }

    /// <summary>The body on the floor.</summary>
    public required FloorContact<T> Underside { get; init; }

    public required PatchParameters<T>[] Patches { get; init; }

    public required WheelWork<T>[] WheelWork { get; init; }

    public required MotorWork<T>[] MotorWork { get; init; }

    public required ControllerWork<T>[] ControllerWork { get; init; }

    /// <summary>Numbers of the body and of the floor under it.</summary>
    public BodyNumbers<T> Body;

    /// <summary>What it is told.</summary>
    public required RobotCommands<T> Commands { get; init; }

    /// <summary>Power that turns the drives that are turned from outside, of the last evaluation [W].</summary>
    public T GivenPower;

    /// <summary>Whether any drive is turned from outside.</summary>
    public required bool HasGiven { get; init; }

    /// <summary>Who bends the commands.</summary>
    public required DriverEquations<T> Driver { get; init; }

    /// <summary>Results of the last evaluation: open-circuit and bus voltage [V], battery current [A], residual of the bus equation [V].</summary>
    public T OpenCircuit, BusVoltage, BatteryCurrent, BusResidual;

    /// <summary>Of the last evaluation: voltage of the battery's slow branch [V], what its resistances are multiplied with [1].</summary>
    public T SlowVoltage, BatteryFactor;

    /// <summary>Friction torque of each drive in the last evaluation [N m], and the greatest it can be now [N m].</summary>
    public required T[] DriveFriction { get; init; }

    public required T[] DriveCapacity { get; init; }

    /// <summary>Body accelerations of the last evaluation: u' - r v and v' + r u [m/s^2].</summary>
    public T AccelerationX, AccelerationY;

    /// <summary>Motion, direction and forces of the last <see cref="Forces"/>; what touches the robot adds to the wrench before <see cref="Finish"/>.</summary>
    public ref BodyMotion<T> Motion => ref _motion[0];

    /// <summary>See <see cref="Motion"/>.</summary>
    public T Sine, Cosine;

    /// <summary>See <see cref="Motion"/>.</summary>
    public ref Wrench<T> Wrench => ref _wrench[0];

    /// <summary>See <see cref="Motion"/>.</summary>
    public ref Attitude<T> Attitude => ref _attitude[0];

    private readonly BodyMotion<T>[] _motion = Aligned.Array<BodyMotion<T>>(1);
    private readonly Wrench<T>[] _wrench = Aligned.Array<Wrench<T>>(1);
    private readonly Attitude<T>[] _attitude = Aligned.Array<Attitude<T>>(1);
    private T _rollRate, _pitchRate, _yawRate;

    /// <summary>Evaluates all derivatives of a robot that nothing else touches; for g > 0 also solves the implicit bristles. See <see cref="IAdditiveSystem"/>.</summary>
    public void Evaluate(T t, T g, Span<T> y, ReadOnlySpan<T> predicted, Span<T> dy)
    {
        Forces(t, g, y[..Layout.ExplicitCount], y[Layout.ExplicitCount..], predicted, dy[..Layout.ExplicitCount], dy[Layout.ExplicitCount..]);
        Finish(y[..Layout.ExplicitCount], dy[..Layout.ExplicitCount]);
    }

    /// <summary>A plain evaluation.</summary>
    public void Evaluate(T t, Span<T> y, Span<T> dy) => Evaluate(t, 0.0, y, y[Layout.ExplicitCount..], dy);

    /// <summary>Longest next step after a plain evaluation: rings that grow are resolved, since the implicit stages would damp them [s].</summary>
    [MethodImpl(Kernel.Part)]
    public T StepBound()
    {
        T least = double.PositiveInfinity;
        for (int i = 0; i < Wheels.Length; i++)
        {
            least = T.Min(least, TreadRing.StepBound(Wheels[i], Kinds[i], WheelWork[i]));
        }

        return least;
    }

    /// <summary>First half of an evaluation: forces of floor, drives and tether; explicit states y, implicit states z and their prediction.</summary>
    [MethodImpl(Kernel.Whole)]
    public void Forces(T t, T g, Span<T> y, Span<T> z, ReadOnlySpan<T> predicted, Span<T> dy, Span<T> dz)
    {
        T heave = y[StateLayout.Heave];
        Move(y);
        Wrench = default;
        Press(Attitude, heave, ref Wrench);
        AddWheels(Motion, Attitude, Sine, Cosine, g, y, z, predicted, dy, dz, ref Wrench);
        int floor = Layout.FloorBristle - Layout.ExplicitCount;
        Underside.Apply(Attitude, Motion, Sine, Cosine, Body.Height + heave, g, z.Slice(floor, ContactFriction.Bristles), dz.Slice(floor, ContactFriction.Bristles), ref Wrench);
        Electrics(t, y, dy);
        SpinDrives(g, y, z, dy, dz);
        T anchorPower = 0.0;
        T tetherPower = 0.0;
        if (Tether is not null)
        {
            dy[Layout.Anchor] = Commands.Segment.AnchorSpeed + (Commands.Segment.AnchorSlope * (t - Commands.Segment.Start));
            Pull(y, dy[Layout.Anchor], ref Wrench);
            anchorPower = Tether.AnchorPower;
            tetherPower = Tether.DampingPower;
        }

        if (HasLedger)
        {
            Span<T> ledger = dy.Slice(Layout.FirstLedger, LedgerIndex.Count);
            ledger[LedgerIndex.Anchor] = HasGiven ? anchorPower + GivenPower : anchorPower;
            ledger[LedgerIndex.Tether] = tetherPower;
        }
    }

    /// <summary>Tension of the tether alone in a state: that of <see cref="Forces"/> to the bit [N].</summary>
    /// <param name="t">Time [s].</param>
    /// <param name="y">Explicit states, at least.</param>
    public T Tension(T t, Span<T> y)
    {
        Wrench<T> none = default;
        Move(y);
        Pull(y, Commands.Segment.AnchorSpeed + (Commands.Segment.AnchorSlope * (t - Commands.Segment.Start)), ref none);
        return Tether!.Tension;
    }

    /// <summary>Second half: accelerations by the whole wrench, slow states, ledger.</summary>
    [MethodImpl(Kernel.Whole)]
    public void Finish(Span<T> y, Span<T> dy)
    {
        MoveBody(Motion, Attitude, Sine, Cosine, Wrench, dy);
        SlowStates(y, dy);
        if (HasLedger)
        {
            SumLedger(y, dy.Slice(Layout.FirstLedger, LedgerIndex.Count));
        }
    }

    private void Pull(Span<T> y, T speed, ref Wrench<T> wrench) =>
        Tether!.Apply(Motion, Attitude, y[StateLayout.X], y[StateLayout.Y], Sine, Cosine, y[StateLayout.Heave], y[Layout.Anchor], speed, ref wrench);

    // Attitude and velocities in the heading frame.
    [MethodImpl(Kernel.Part)]
    private void Move(Span<T> y)
    {
        ref BodyMotion<T> m = ref Motion;
        ref Attitude<T> a = ref Attitude;
        a.Set(y[StateLayout.Roll], y[StateLayout.Pitch]);
        _rollRate = y[StateLayout.RollRate];
        _pitchRate = y[StateLayout.PitchRate];
        _yawRate = y[StateLayout.YawRate];
        m.U = y[StateLayout.U];
        m.V = y[StateLayout.V];
        m.ZDot = y[StateLayout.HeaveRate];
        a.ToHeading(_rollRate, _pitchRate, _yawRate, out m.PhiDot, out m.ThetaDot, out m.R);
        T.SinCos(y[StateLayout.Heading], out Sine, out Cosine);
    }

    /// <summary>Adds the downforce D/(1 + rise/L)^2 at its place on the underside; the rise is counted from level on just touching tyres.</summary>
    /// <param name="attitude">The body's attitude.</param>
    /// <param name="heave">Its heave [m].</param>
    /// <param name="wrench">Added to.</param>
    [MethodImpl(Kernel.Part)]
    public void Press(in Attitude<T> attitude, T heave, ref Wrench<T> wrench)
    {
        attitude.ToHeading(Body.DownforceX, Body.DownforceY, -Body.Height, out T x, out T y, out T z);
        T gap = 1.0 + (T.Max(0.0, (Body.Height + heave) + z) * Body.InverseDownforceGap);
        wrench.Add(x, y, z, 0.0, 0.0, -(Body.Downforce / (gap * gap)));
    }

    [MethodImpl(Kernel.Part)]
    private void MoveBody(in BodyMotion<T> motion, in Attitude<T> attitude, T sine, T cosine, in Wrench<T> wrench, Span<T> dy)
    {
        T gx = (cosine * Body.GravityX) + (sine * Body.GravityY);
        T gy = (cosine * Body.GravityY) - (sine * Body.GravityX);
        AccelerationX = (wrench.Fx * Body.InverseMass) + gx;
        AccelerationY = (wrench.Fy * Body.InverseMass) + gy;
        attitude.Rates(motion.PhiDot, motion.ThetaDot, motion.R, out T turn, out dy[StateLayout.Roll], out dy[StateLayout.Pitch]);
        attitude.ToBody(wrench.Roll, wrench.Pitch, wrench.Yaw, out T roll, out T pitch, out T yaw);
        dy[StateLayout.X] = (cosine * motion.U) - (sine * motion.V);
        dy[StateLayout.Y] = (sine * motion.U) + (cosine * motion.V);
        dy[StateLayout.Heading] = turn;
        dy[StateLayout.U] = AccelerationX + (turn * motion.V);
        dy[StateLayout.V] = AccelerationY - (turn * motion.U);
        dy[StateLayout.Heave] = motion.ZDot;
        dy[StateLayout.HeaveRate] = (wrench.Fz * Body.InverseMass) - Body.GravityZ;
        dy[StateLayout.RollRate] = (roll * Body.InverseRoll) - (Body.GyroRoll * (_pitchRate * _yawRate));
        dy[StateLayout.PitchRate] = (pitch * Body.InversePitch) - (Body.GyroPitch * (_yawRate * _rollRate));
        dy[StateLayout.YawRate] = (yaw * Body.InverseYaw) - (Body.GyroYaw * (_rollRate * _pitchRate));
    }

    [MethodImpl(Kernel.Part)]
    private void SlowStates(Span<T> y, Span<T> dy)
    {
        if (Layout.Charge >= 0)
        {
            dy[Layout.Charge] = BatteryCurrent;
        }

        if (Layout.SlowVoltage >= 0)
        {
            dy[Layout.SlowVoltage] = Battery!.SlowRise(BatteryFactor, BatteryCurrent, SlowVoltage);
        }

        if (Layout.BatteryHeat >= 0)
        {
            dy[Layout.BatteryHeat] = Battery!.Warming(BatteryFactor, BatteryCurrent, SlowVoltage, y[Layout.BatteryHeat], Body.AirTemperature);
        }

        for (int m = 0; m < Motors.Length; m++)
        {
            ref readonly MotorParameters<T> p = ref Motors[m];
            int heat = MotorShapes[m].HeatIndex;
            if (heat >= 0)
            {
                T winding = y[heat];
                T flow = (winding - y[heat + 1]) * p.WindingToCaseConductance;
                T loss = (y[heat + 1] - Body.AirTemperature) * p.CaseToAirConductance;
                dy[heat] = (MotorWork[m].CopperPower - flow) * p.InverseWindingCapacity;
                dy[heat + 1] = (flow - loss) * p.InverseCaseCapacity;
            }
        }

        for (int k = 0; k < Controllers.Length; k++)
        {
            ref readonly ControllerParameters<T> p = ref Controllers[k];
            int heat = ControllerShapes[k].HeatIndex;
            if (heat >= 0)
            {
                T loss = (y[heat] - Body.AirTemperature) * p.ThermalConductance;
                dy[heat] = (ControllerWork[k].Loss - loss) * p.InverseHeatCapacity;
            }
        }
    }
}
