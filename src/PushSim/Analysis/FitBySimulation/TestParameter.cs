using PushSim.Tyres;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>A number of a tyre that a pull or drag test may tell.</summary>
/// <param name="Key">snake_case name with its SI unit, as in JSON.</param>
/// <param name="Low">Least value looked at [unit of the key].</param>
/// <param name="High">Greatest value looked at [unit of the key].</param>
/// <param name="Of">Reads it from a tyre [unit of the key].</param>
/// <param name="Put">The tyre with another value of it [unit of the key].</param>
public sealed record TestParameter(string Key, double Low, double High, Func<TyreSettings, double> Of, Func<TyreSettings, double, TyreSettings> Put)
{
    /// <summary>All parameters, in the order of their vectors.</summary>
    public static IReadOnlyList<TestParameter> All { get; } =
    [
        new("static_friction", 0.01, 5.0, t => t.StaticFriction, (t, v) => t with { StaticFriction = v }),
        new("kinetic_friction", 0.01, 5.0, t => t.KineticFriction, (t, v) => t with { KineticFriction = v }),
        new("slip_speed_m_per_s", 0.003, 10.0, t => t.SlipSpeed, (t, v) => t with { SlipSpeed = v }),
        new("body_stiffness_n_per_m", 100.0, 1e6, t => t.BodyStiffness, (t, v) => t with { BodyStiffness = v }),
        new("body_damping_n_s_per_m", 0.01, 1e3, t => t.BodyDamping, (t, v) => t with { BodyDamping = v }),
    ];

    /// <summary>Places of the frictions, which scatter together from pull to pull.</summary>
    internal static IReadOnlyList<int> Frictions { get; } = [0, 1];

    /// <summary>Whether it is a friction.</summary>
    public bool IsFriction => Frictions.Any(k => All[k] == this);

    /// <summary>Logarithm of kinetic over static friction in a vector of logarithms [1].</summary>
    internal static double KineticOverStatic(IList<double> x) => x[1] - x[0];
}
