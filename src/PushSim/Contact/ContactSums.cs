using System.Runtime.CompilerServices;
using PushSim.Chassis;

namespace PushSim.Contact;

/// <summary>Forces of some part of a contact, seen from the body whose faces it was measured from ("own").</summary>
internal struct ContactSums<T>
    where T : struct, IReal<T>
{
    /// <summary>Of the normal forces.</summary>
    public Wrench<T> Own, Other;

    /// <summary>Of the normal forces turned along the face: friction for a friction coefficient of -1.</summary>
    public Wrench<T> OwnAlong, OtherAlong;

    /// <summary>Sum of normal forces [N], times closing speed [W], times slip along the face [W].</summary>
    public T Normal, Closing, Slip;

    /// <summary>Moments of the normal force about the own centre of mass, own axes [N m].</summary>
    public T NormalX, NormalY;

    /// <summary>On the own ramp and on the other's.</summary>
    public SlopeSums<T> OwnRamp, OtherRamp;

    /// <summary>Sets all to zero; what belongs to ramps only where there are any.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Clear(bool ramps)
    {
        Own = default;
        Other = default;
        OwnAlong = default;
        OtherAlong = default;
        Normal = 0.0;
        Closing = 0.0;
        Slip = 0.0;
        NormalX = 0.0;
        NormalY = 0.0;
        if (ramps)
        {
            OwnRamp = default;
            OtherRamp = default;
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Add(in ContactSums<T> b, bool ramps)
    {
        AddWrench(ref Own, b.Own);
        AddWrench(ref Other, b.Other);
        AddWrench(ref OwnAlong, b.OwnAlong);
        AddWrench(ref OtherAlong, b.OtherAlong);
        Normal = Normal + b.Normal;
        Closing = Closing + b.Closing;
        Slip = Slip + b.Slip;
        NormalX = NormalX + b.NormalX;
        NormalY = NormalY + b.NormalY;
        if (ramps)
        {
            OwnRamp.Add(b.OwnRamp);
            OtherRamp.Add(b.OtherRamp);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddWrench(ref Wrench<T> a, in Wrench<T> b)
    {
        a.Fx = a.Fx + b.Fx;
        a.Fy = a.Fy + b.Fy;
        a.Fz = a.Fz + b.Fz;
        a.Roll = a.Roll + b.Roll;
        a.Pitch = a.Pitch + b.Pitch;
        a.Yaw = a.Yaw + b.Yaw;
    }
}
