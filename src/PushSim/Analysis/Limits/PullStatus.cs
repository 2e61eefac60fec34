namespace PushSim.Analysis.Limits;

/// <summary>How the search for a steady pull at standstill ended.</summary>
public enum PullStatus
{
    /// <summary>It was found.</summary>
    Found,

    /// <summary>There is none: the robot rears up at a pull below what its drives and tyres give.</summary>
    RearsUp,

    /// <summary>The search came to no end; whether there is one is not known.</summary>
    NotFound,
}
