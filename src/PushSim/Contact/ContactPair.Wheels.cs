using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <content>The bodies' wheels.</content>
internal sealed partial class ContactPair<T>
{
    // Wheels of either body on the parts of the other, and on its wheels; the two sides are summed last, so that neither comes before the other.
    [MethodImpl(Kernel.Part)]
    private bool Roll(in BodyPose<T> a, in BodyPose<T> b, out PairForce<T> sum)
    {
        FaceSums<T> onA = default;
        FaceSums<T> onB = default;
        bool any = false;
        WheelsA.Release();
        WheelsB.Release();
        if (_wheelsOnA.Length > 0)
        {
            any |= Roll(_wheelsOnA, _groupsA, _meeting.OfA, WheelsB, ref onA);
        }

        if (_wheelsOnB.Length > 0)
        {
            any |= Roll(_wheelsOnB, _groupsB, _meeting.OfB, WheelsA, ref onB);
        }

        sum = default;
        if (any)
        {
            PairForce<T>.Of(a, b, onA, onB, out sum);
        }

        if (_wheelPairs is { } pairs)
        {
            PairForce<T> rims = default;
            if (pairs.Act(_meeting, a, b, _numbers.Stiffness, _numbers.Damping, ref rims))
            {
                sum.Add(rims);
                any = true;
            }
        }

        return any;
    }

    // Mirror partners among the parts are summed first, as in Press.
    private bool Roll(WheelSide<T>[] sides, int[][] groups, in PartView<T> view, WheelRims<T> wheels, ref FaceSums<T> sum)
    {
        bool any = false;
        foreach (int[] group in groups)
        {
            FaceSums<T> pair = default;
            bool acts = sides[group[0]].Act(view, _numbers.Damping, ref pair);
            if (group.Length > 1)
            {
                FaceSums<T> other = default;
                acts |= sides[group[1]].Act(view, _numbers.Damping, ref other);
                pair.Add(other);
            }

            if (acts)
            {
                sum.Add(pair);
                wheels.Add(sides[group[0]].Torque, group.Length > 1 ? sides[group[1]].Torque : default);
                any = true;
            }
        }

        return any;
    }

    [MethodImpl(Kernel.Part)]
    private void AddWheels(in PairForce<T> body, in PairForce<T> w)
    {
        T hx = (_meeting.HalfY * w.Z) - (_meeting.HalfZ * w.Y);
        T hy = (_meeting.HalfZ * w.X) - (_meeting.HalfX * w.Z);
        T hz = (_meeting.HalfX * w.Y) - (_meeting.HalfY * w.X);
        ForceX = ForceX + w.X;
        ForceY = ForceY + w.Y;
        ForceZ = ForceZ + w.Z;
        OnA.X = OnA.X + (w.MomentX + hx);
        OnA.Y = OnA.Y + (w.MomentY + hy);
        OnA.Z = OnA.Z + (w.MomentZ + hz);
        OnB.X = OnB.X + (hx - w.MomentX);
        OnB.Y = OnB.Y + (hy - w.MomentY);
        OnB.Z = OnB.Z + (hz - w.MomentZ);
        NormalForce = body.Normal + w.Normal;
        T inverse = 1.0 / T.Max(NormalForce, EdgeProfile.Nothing<T>());
        CentreX = _meeting.X + ((body.PlaceX + w.PlaceX) * inverse);
        CentreY = _meeting.Y + ((body.PlaceY + w.PlaceY) * inverse);
        CentreZ = _meeting.Z + ((body.PlaceZ + w.PlaceZ) * inverse);
        T bodies = (((w.X * _meeting.VX) + (w.Y * _meeting.VY)) + (w.Z * _meeting.VZ)) + (((w.MomentX * _meeting.WX) + (w.MomentY * _meeting.WY)) + (w.MomentZ * _meeting.WZ));
        LostPower = LostPower - (bodies + (WheelsA.Power() + WheelsB.Power()));
    }
}
