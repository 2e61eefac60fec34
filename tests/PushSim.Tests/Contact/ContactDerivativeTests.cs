using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>The contact over dual numbers: exact derivatives, against central differences. Computed here.</summary>
public class ContactDerivativeTests
{
    public static TheoryData<int, int> Rows
    {
        get
        {
            TheoryData<int, int> rows = [];
            foreach (int which in new[] { 0, 2, 8, 15, 18, 24 })
            {
                for (int input = 0; input < 10; input++)
                {
                    rows.Add(which, input);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Dual_derivative_is_the_slope_of_the_forces(int which, int input)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var dual = new ContactPair<Dual<R1>>(a, b, Touching.Usual);
        var random = new Random(77 + which);
        int compared = 0;
        for (int i = 0; i < 60; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            const double Step = 1e-7;
            double[] plus = Forces(pair, Shift(p, input, Step), q);
            double[] zero = Forces(pair, p, q);
            double[] minus = Forces(pair, Shift(p, input, -Step), q);
            double[] slope = DualForces(dual, p, q, input, out double[] value);
            Assert.Equal(zero, value);
            for (int c = 0; c < zero.Length; c++)
            {
                double right = (plus[c] - zero[c]) / Step;
                double left = (zero[c] - minus[c]) / Step;
                double scale = 1.0 + zero.Max(Math.Abs) + Math.Abs(right) + Math.Abs(left);

                // at a kink the two sides differ; there the dual takes either
                if (pair.NormalForce.Value > 0.0 && Math.Abs(right - left) <= 1e-5 * scale)
                {
                    Assert.Equal(0.5 * (right + left), slope[c], 2e-5 * scale);
                    compared++;
                }
            }
        }

        Assert.True(compared > 100, $"{compared} comparisons");
    }

    private static BodyPose<R1> Shift(BodyPose<R1> p, int input, double by)
    {
        ref R1 x = ref Input(ref p, input);
        x = x.Value + by;
        return p;
    }

    private static ref T Input<T>(ref BodyPose<T> p, int input)
        where T : struct, IReal<T>
    {
        switch (input)
        {
            case 0: return ref p.X;
            case 1: return ref p.Y;
            case 2: return ref p.Heave;
            case 3: return ref p.Pitch;
            case 4: return ref p.Roll;
            case 5: return ref p.Motion.U;
            case 6: return ref p.Motion.V;
            case 7: return ref p.Motion.R;
            case 8: return ref p.Motion.ThetaDot;
            default: return ref p.Sine;
        }
    }

    private static double[] Forces(ContactPair<R1> pair, in BodyPose<R1> p, in BodyPose<R1> q)
    {
        R1[] z = [.. Enumerable.Repeat((R1)0.0003, pair.BristleCount)];
        Touching.Outcome o = Touching.Evaluate(pair, p, q, 1e-3, z);
        return [.. o.OnA, .. o.OnB, pair.LostPower.Value];
    }

    private static double[] DualForces(ContactPair<Dual<R1>> pair, in BodyPose<R1> p, in BodyPose<R1> q, int input, out double[] value)
    {
        BodyPose<Dual<R1>> dp = Lift(p);
        Input(ref dp, input).Slope = 1.0;
        Dual<R1>[] z = [.. Enumerable.Repeat((Dual<R1>)0.0003, pair.BristleCount)];
        var dz = new Dual<R1>[z.Length];
        Wrench<Dual<R1>> onA = default;
        Wrench<Dual<R1>> onB = default;
        pair.Evaluate(dp, Lift(q), 1e-3, z, dz, ref onA, ref onB);
        Dual<R1>[] all =
            [onA.Fx, onA.Fy, onA.Fz, onA.Roll, onA.Pitch, onA.Yaw, onB.Fx, onB.Fy, onB.Fz, onB.Roll, onB.Pitch, onB.Yaw, pair.LostPower];
        value = [.. all.Select(x => x.Value.Value)];
        return [.. all.Select(x => x.Slope.Value)];
    }

    private static BodyPose<Dual<R1>> Lift(in BodyPose<R1> p) => new()
    {
        X = p.X.Value,
        Y = p.Y.Value,
        Sine = p.Sine.Value,
        Cosine = p.Cosine.Value,
        Heave = p.Heave.Value,
        Pitch = p.Pitch.Value,
        Roll = p.Roll.Value,
        Motion = new BodyMotion<Dual<R1>>
        {
            U = p.Motion.U.Value,
            V = p.Motion.V.Value,
            R = p.Motion.R.Value,
            ZDot = p.Motion.ZDot.Value,
            ThetaDot = p.Motion.ThetaDot.Value,
            PhiDot = p.Motion.PhiDot.Value,
        },
    };
}
