using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Meaning;

/// <summary>A fitted tyre, ready to be put on a robot.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Static">Static friction [1].</param>
/// <param name="Kinetic">Kinetic friction [1].</param>
/// <param name="Spread">Standard deviation of the friction from pull to pull, as a share of its mean [1]; 0 if one pull only.</param>
/// <param name="IsAtLeast">Whether the motors set the pulls, so that both frictions are lower bounds.</param>
/// <param name="IsWearKnown">Whether the robot that it is put on has this tyre's own material, so that its wear is known.</param>
public sealed record FittedTyre(string Name, double Static, double Kinetic, double Spread, bool IsAtLeast, bool IsWearKnown)
{
    /// <summary>Exponent of friction against load that the pulls showed [1]; 0 if they had one load.</summary>
    public double LoadExponent { get; init; }

    /// <summary>Load of one wheel in the pulls [N].</summary>
    public double WheelLoad { get; init; }

    /// <summary>Of a fit.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="robot">The robot it was, or will be, on.</param>
    /// <param name="isMaterial">Whether the robot's tyres were read as made of the material that the fit is named after.</param>
    public static FittedTyre Of(TyreFit fit, RobotSettings robot, bool isMaterial)
    {
        IReadOnlyList<int> tested = GripLoad.TestedWheels(robot);
        double mean = fit.Frictions.Count > 1 ? Sample.Mean(fit.Frictions) : 0.0;
        double spread = mean > 0.0 ? Math.Sqrt(Sample.Variance(fit.Frictions)) / mean : 0.0;
        bool isOwn = isMaterial || Named(robot, fit.Name) is not null;
        bool wears = tested.All(i => (Named(robot, fit.Name) ?? robot.Wheels[i].Tyre).SpecificWear > 0.0);
        return new FittedTyre(fit.Name, fit.ForModel.Static, fit.ForModel.Kinetic, spread, fit.Limit.IsOfMotors, isOwn && wears)
        {
            LoadExponent = fit.LoadExponent?.Value ?? 0.0,
            WheelLoad = fit.Load / Math.Max(1, tested.Count),
        };
    }

    /// <summary>The robot with this tyre on its wheels under test: friction as fitted, everything else from the tyre of that name in the robot's file, or from the tyre
    /// that it replaces. A friction curve, rise or dust of the replaced tyre goes: the fitted friction is the whole of it on that floor.</summary>
    /// <param name="robot">The robot.</param>
    /// <param name="factor">Multiplies both frictions [1].</param>
    public RobotSettings On(RobotSettings robot, double factor = 1.0)
    {
        IReadOnlyList<int> tested = GripLoad.TestedWheels(robot);
        TyreSettings? own = Named(robot, Name);
        return robot with { Wheels = [.. robot.Wheels.Select((w, i) => tested.Contains(i) ? w with { Tyre = Fitted(own ?? w.Tyre, factor) } : w)] };
    }

    private static TyreSettings? Named(RobotSettings robot, string name) =>
        robot.Wheels.Select(w => w.Tyre).FirstOrDefault(t => string.Equals(t.Name, name, StringComparison.OrdinalIgnoreCase));

    private TyreSettings Fitted(TyreSettings like, double factor) => like.WithFriction(factor * Static, factor * Kinetic) with
    {
        Name = Name,
        LoadExponent = LoadExponent,

        // friction is the fitted one at the load of the pulls
        ReferenceLoad = LoadExponent == 0.0 ? like.ReferenceLoad : WheelLoad / like.TreadArea,
        SpecificWear = IsWearKnown ? like.SpecificWear : 0.0,
    };
}
