namespace PushSim.Numerics;

/// <summary>Tolerances and limits of one run. The caller checks them.</summary>
internal sealed record IntegrationSettings
{
    /// <summary>Relative tolerance per step [1].</summary>
    public double RelativeTolerance { get; init; } = 1e-4;

    /// <summary>Absolute tolerance per component, each in the unit of its component; positive infinity keeps a component (a pure
    /// quadrature) out of the error norm [unit of the component].</summary>
    public required double[] AbsoluteTolerances { get; init; }

    /// <summary>First step of each segment, positive [s]; null estimates it.</summary>
    public double? InitialStep { get; init; }

    /// <summary>A rejection that asks for a shorter step than this ends the run [s]. Usual 1e-12; the spacing of doubles at the
    /// present time is the limit in any case. Too large, and short transients fail.</summary>
    public double MinimumStep { get; init; } = 1e-12;

    /// <summary>Longest step, positive [s].</summary>
    public double MaximumStep { get; init; } = double.PositiveInfinity;

    /// <summary>Cap on evaluations of the right-hand side [1].</summary>
    public long MaximumEvaluations { get; init; } = 10_000_000;
}
