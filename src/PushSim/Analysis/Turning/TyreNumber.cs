using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Turning;

/// <summary>A number of a tyre that chatter hangs on: how it is read and set, and how far it may go to cure chatter.</summary>
/// <param name="Part">The number.</param>
/// <param name="Get">Reads it [unit of the part].</param>
/// <param name="Put">Sets it [unit of the part].</param>
/// <param name="Most">The largest that a tyre would have [unit of the part].</param>
internal sealed record TyreNumber(ChatterPart Part, Func<TyreSettings, double> Get, Func<TyreSettings, double, TyreSettings> Put, Func<TyreSettings, double> Most)
{
    // Loss of a tyre body that gives back a twentieth of a knock, c_c = eta sqrt(k_c m_t) with eta = -ln(0.05)/pi [1]: hardly a rubber is duller.
    private const double DullestLoss = 0.9536;

    // How far give of the tread and vertical damping go, as a multiple of what they are: another material, no longer another tyre. Common practice, no source [1].
    private const double MostGive = 3.0;
    private const double MostVertical = 10.0;

    // in the order of the parts
    private static readonly TyreNumber[] s_all =
    [
        new(ChatterPart.BodyDamping, t => t.BodyDamping, (t, v) => t with { BodyDamping = v }, t => DullestLoss * Math.Sqrt(t.BodyStiffness * t.TreadMass)),
        new(ChatterPart.TreadGive, t => t.BreakawayDeflection, (t, v) => t with { BreakawayDeflection = v }, t => MostGive * t.BreakawayDeflection),
        new(ChatterPart.VerticalDamping, t => t.VerticalDamping, (t, v) => t with { VerticalDamping = v }, t => MostVertical * t.VerticalDamping),
        new(ChatterPart.SlipSpeed, t => t.SlipSpeed, (t, v) => t with { SlipSpeed = v }, t => t.SlipSpeed),
    ];

    /// <summary>The row of a part.</summary>
    public static TyreNumber Of(ChatterPart part) => s_all[(int)part];

    /// <summary>The scenario with the number of every tyre of its robot times a factor [1].</summary>
    public ScenarioSettings Scaled(ScenarioSettings scenario, double factor) => TurnModel.With(scenario, t => Put(t, factor * Get(t)));

    /// <summary>The change by a factor [1].</summary>
    public ChatterChange Change(ScenarioSettings scenario, double factor)
    {
        double[] values = [.. scenario.Robot.Wheels.Select(w => Get(w.Tyre)).Distinct()];
        return new ChatterChange(Part, factor, values.Length == 1 ? values[0] : null);
    }

    /// <summary>The largest factor that all tyres may take [1]; 1 and less where there is none.</summary>
    public double MostFactor(ScenarioSettings scenario) => scenario.Robot.Wheels.Min(w => Get(w.Tyre) > 0.0 ? Most(w.Tyre) / Get(w.Tyre) : 0.0);
}
