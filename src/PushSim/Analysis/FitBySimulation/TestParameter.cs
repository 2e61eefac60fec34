using PushSim.Tyres;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>A number of a tyre that a pull or drag test may tell.</summary>
/// <param name="Key">snake_case name with its SI unit, as in JSON.</param>
/// <param name="Words">Name for a person.</param>
/// <param name="Unit">SI unit as printed; empty for a ratio.</param>
/// <param name="Low">Least value looked at [the unit].</param>
/// <param name="High">Greatest value looked at [the unit].</param>
/// <param name="Of">Reads it from a tyre [the unit].</param>
/// <param name="Put">The tyre with another value of it [the unit].</param>
/// <param name="Advice">What kind of test tells it.</param>
public sealed record TestParameter(
    string Key, string Words, string Unit, double Low, double High, Func<TyreSettings, double> Of, Func<TyreSettings, double, TyreSettings> Put, string Advice)
{
    /// <summary>All parameters, in the order of their vectors.</summary>
    public static IReadOnlyList<TestParameter> All { get; } =
    [
        new("static_friction", "breakaway friction", "", 0.01, 5.0, t => t.StaticFriction, (t, v) => t with { StaticFriction = v }, "pull until it lets go, slowly enough for the cell"),
        new("kinetic_friction", "sliding friction", "", 0.01, 5.0, t => t.KineticFriction, (t, v) => t with { KineticFriction = v }, "go on pulling after it lets go, to speeds well above the slip speed"),
        new("slip_speed_m_per_s", "slip speed", "m/s", 0.003, 10.0, t => t.SlipSpeed, (t, v) => t with { SlipSpeed = v }, "let it slide at several speeds, slow and fast"),
        new("body_stiffness_n_per_m", "tyre body stiffness", "N/m", 100.0, 1e6, t => t.BodyStiffness, (t, v) => t with { BodyStiffness = v }, "use a stiff tether, and a cell that is read often on the ramp"),
        new("body_damping_n_s_per_m", "tyre body damping", "N s/m", 0.01, 1e3, t => t.BodyDamping, (t, v) => t with { BodyDamping = v }, "it shows only in the shaking after it lets go: read the cell hundreds of times a second, unfiltered"),
    ];

    /// <summary>Places of the frictions, which scatter together from pull to pull.</summary>
    internal static IReadOnlyList<int> Frictions { get; } = [0, 1];

    /// <summary>Logarithm of kinetic over static friction in a vector of logarithms [1].</summary>
    internal static double KineticOverStatic(IList<double> x) => x[1] - x[0];
}
