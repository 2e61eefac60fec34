using System.Runtime.CompilerServices;
using PushSim.Powertrain;

namespace PushSim.Simulation;

/// <summary>What the driver and the controller's aid add to the commands.
/// <code>
///   hold      h' = (-k_h (psi - psi_0) - h)/lag
///   steer     c, d = cross and dot product of heading and line of sight      e = 2 c/(1 + max(d, d_0))      (2 tan of half the angle up to acos d_0, 0 behind)
///             e_1' = (e - e_1) 3/dead,  e_2' = (e_1 - e_2) 3/dead,  e_3' = (e_2 - e_3) 3/dead
///             s' = clamp((clamp(k e_3, limit) - s)/hand, rate)
///   ease      w' = 1 while u below u_0, else -w/forget; at rest once w passes the patience      q' = rate while w is past it, up to the share that goes
///   duty      (command (1 - q) -+ (h + s)), both sides scaled back together where one would pass 1
/// </code>
/// While nothing is commanded the driver keeps the stick still and does not wait. That a dead time is a chain of three lags, and all sizes, is
/// common practice, no source. Limits: the driver sees the opponent's centre exactly, and nothing else.</summary>
internal sealed class DriverEquations<T> : INumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>States of steering: three lags, then the stick.</summary>
    public const int SteeringStates = 4;

    /// <summary>States of easing: the time without ground, then the share of the throttle that is gone.</summary>
    public const int EasingStates = 2;

    // Lags in the chain of the dead time [1].
    private const double Lags = 3.0;

    // d_0: beyond 154 deg the seen angle falls to 0 at 180, where left and right are one [1].
    private const double Behind = -0.9;

    // Time of the hand [s]; it rounds the corners of the rate limit. Longer adds to the dead time, shorter costs steps.
    private const double HandTime = 0.03;

    // Distance below which the line of sight fades [m]: centres that lie over each other give none.
    private const double Near = 1e-3;

    // Forward speed above which a driver sees ground gained [m/s], and the time in which the wait is forgotten then [s]: an eye sees 2 cm in a second.
    private const double SeenSpeed = 0.02;
    private const double ForgetTime = 0.1;

    /// <summary>Its numbers.</summary>
    public DriverNumbers<T> Numbers;

    /// <summary>From the own centre of mass to the opponent's, own floor axes [m]; zero without one.</summary>
    public T SightX, SightY;

    /// <param name="manoeuvre">What the robot is told, and by whom.</param>
    public DriverEquations(ManoeuvreSettings manoeuvre)
    {
        DriverSettings d = manoeuvre.Driver;
        Numbers.HoldGain = d.HeadingHold;
        Numbers.InverseHoldLag = 1.0 / d.HeadingLag;
        Numbers.HoldHeadingAt = manoeuvre.InitialHeading;
        Numbers.SteeringGain = d.Steering;
        Numbers.SteeringLimit = d.SteeringLimit;
        Numbers.SteeringRate = d.SteeringRate;
        Numbers.InverseLag = Lags / d.DeadTime;
        Numbers.EasedShare = 1.0 - d.EaseTo;
        Numbers.EasingRate = d.EaseRate;
        Numbers.Patience = d.EaseAfter;
    }

    public void Show(NumberWalk<T> walk) => walk.Take(ref Numbers);

    /// <summary>Angle by which the opponent is seen to the left of the nose [rad], 2 tan of its half up to 154 degrees.</summary>
    public T Seen(T sine, T cosine)
    {
        T cross = (cosine * SightY) - (sine * SightX);
        T dot = (cosine * SightX) + (sine * SightY);
        T inverse = 1.0 / T.Sqrt(((SightX * SightX) + (SightY * SightY)) + (Near * Near));
        return 2.0 * (cross * inverse) / (1.0 + T.Max(dot * inverse, Behind));
    }

    /// <summary>Bends the duties and sets the rates of the driver's own states.</summary>
    /// <param name="layout">Where they stand.</param>
    /// <param name="y">States.</param>
    /// <param name="dy">Their rates.</param>
    /// <param name="sine">Sine of the heading [1].</param>
    /// <param name="cosine">Cosine of the heading [1].</param>
    /// <param name="controllers">Holds the commands, gets the duties.</param>
    /// <param name="parameters">Whose side each controller is on.</param>
    [MethodImpl(Kernel.Part)]
    public void Apply(StateLayout layout, Span<T> y, Span<T> dy, T sine, T cosine, ControllerWork<T>[] controllers, ControllerParameters<T>[] parameters)
    {
        T isIdle = 1.0;
        for (int k = 0; k < controllers.Length; k++)
        {
            isIdle = T.Min(isIdle, controllers[k].IsZero);
        }

        T turn = 0.0;
        if (layout.HeadingHold >= 0)
        {
            turn = y[layout.HeadingHold];
            T wanted = T.IfLess(0.5, isIdle, 0.0, Numbers.HoldGain * (Numbers.HoldHeadingAt - y[StateLayout.Heading]));
            dy[layout.HeadingHold] = (wanted - turn) * Numbers.InverseHoldLag;
        }

        if (layout.Steering >= 0)
        {
            turn = turn + y[layout.Steering + 3];
            Steer(y.Slice(layout.Steering, SteeringStates), dy.Slice(layout.Steering, SteeringStates), Seen(sine, cosine), isIdle);
        }

        T left = 1.0;
        if (layout.Easing >= 0)
        {
            left = 1.0 - y[layout.Easing + 1];
            Ease(y.Slice(layout.Easing, EasingStates), dy.Slice(layout.Easing, EasingStates), y[StateLayout.U], isIdle);
        }

        T most = 1.0;
        for (int k = 0; k < controllers.Length; k++)
        {
            controllers[k].Duty = (left * controllers[k].Duty) + T.IfLess(0.5, controllers[k].IsZero, 0.0, parameters[k].SideSign * turn);
            most = T.Max(most, T.Abs(controllers[k].Duty));
        }

        T scale = 1.0 / most;
        for (int k = 0; k < controllers.Length; k++)
        {
            controllers[k].Duty = controllers[k].Duty * scale;
        }
    }

    private void Steer(Span<T> y, Span<T> dy, T seen, T isIdle)
    {
        dy[0] = (seen - y[0]) * Numbers.InverseLag;
        dy[1] = (y[0] - y[1]) * Numbers.InverseLag;
        dy[2] = (y[1] - y[2]) * Numbers.InverseLag;
        T wanted = T.IfLess(0.5, isIdle, 0.0, Clamp(Numbers.SteeringGain * y[2], Numbers.SteeringLimit));
        dy[3] = Clamp((wanted - y[3]) * (1.0 / HandTime), Numbers.SteeringRate);
    }

    private void Ease(Span<T> y, Span<T> dy, T speed, T isIdle)
    {
        T waits = T.IfLess(speed, SeenSpeed, 1.0, -y[0] * (1.0 / ForgetTime));
        dy[0] = T.IfLess(0.5, isIdle, 0.0, T.IfLess(y[0], Numbers.Patience, waits, 0.0));
        T goes = T.Min(Numbers.EasingRate, T.Max(0.0, (Numbers.EasedShare - y[1]) * (1.0 / HandTime)));
        dy[1] = T.IfLess(y[0], Numbers.Patience, 0.0, goes);
    }

    private static T Clamp(T x, T bound) => T.Max(-bound, T.Min(bound, x));
}
