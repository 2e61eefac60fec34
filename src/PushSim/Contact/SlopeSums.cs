using System.Runtime.CompilerServices;
using PushSim.Chassis;

namespace PushSim.Contact;

/// <summary>The part of a contact that one ramp carries.</summary>
internal struct SlopeSums<T>
    where T : struct, IReal<T>
{
    /// <summary>The normal forces turned up the slope on the rider, down on the ramp: friction for a coefficient of -1.</summary>
    public Wrench<T> Own, Other;

    /// <summary>Sum of normal forces [N], times the rider's speed up the slope [W].</summary>
    public T Normal, Slip;

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Add(in SlopeSums<T> b)
    {
        ContactSums<T>.AddWrench(ref Own, b.Own);
        ContactSums<T>.AddWrench(ref Other, b.Other);
        Normal = Normal + b.Normal;
        Slip = Slip + b.Slip;
    }
}
