namespace PushSim.Analysis.FitBySimulation;

/// <summary>Why a test does not tell a parameter.</summary>
public enum UntoldCause
{
    /// <summary>It does.</summary>
    None,

    /// <summary>Nothing of the fit is to be believed; <see cref="SimulationFit.Doubt"/> says why.</summary>
    Doubt,

    /// <summary>Any smaller value does as well.</summary>
    AnySmaller,

    /// <summary>Any larger value does as well.</summary>
    AnyLarger,

    /// <summary>The search did not come to rest.</summary>
    NotAtRest,

    /// <summary>A change of another parameter makes up for it.</summary>
    Together,

    /// <summary>The force hardly changes with it.</summary>
    Faint,
}
