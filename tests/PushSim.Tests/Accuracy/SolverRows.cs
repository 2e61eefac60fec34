using PushSim.Tests.Numerics;
using PushSim.Tests.Problems;

namespace PushSim.Tests.Accuracy;

/// <summary>Initial value problems, events and order of accuracy.</summary>
internal static class SolverRows
{
    private const string TestSet = "Mazzia, Magherini, Test Set for IVP Solvers, release 2.4, 2008, read second-hand";
    private const string Hairer = "Hairer, Norsett, Wanner, Solving Ordinary Differential Equations I";
    private const string Kennedy = "Kennedy, Carpenter, Applied Numerical Mathematics 44, 2003, appendix";
    private const double Tolerance = 1e-6;

    // five tolerances, absolute ones a thousandth of the relative one
    private static AccuracyRow Stiff(string what, Problem p, int i) => new(
        what, "1", p.Reference[i], 5.0 * Tolerance * (1e-3 + Math.Abs(p.Reference[i])), TestSet, () => AdaptiveAccuracyTests.End(p, "ARK4(3)", Tolerance, 1e-3 * Tolerance)[i]);

    private static AccuracyRow Tight(string what, Problem p, double bound, string source, double floor = 1e-9) =>
        new(what, "1", p.Reference[0], bound, source, () => AdaptiveAccuracyTests.End(p, "ARK5(4)", 1e-12, 1e-12)[0]) { Floor = floor };

    private static AccuracyRow Order(string name, double order) => new(
        $"order of accuracy of {name}, both halves", "1", order, 0.2, Kennedy, () => OrderOfAccuracyTests.Slope(name, "additive").Slope);

    private static AccuracyRow Bounce(int number, double time) => new(
        $"bouncing ball, 20 m/s, restitution 0.9: hit {number}", "s", time, 1e-9, "closed form, computed here", () => EventFinderTests.Bounce(0.0, 20.0, 9.8, 0.9, 5)[number - 1]);

    public static readonly AccuracyRow[] All =
    [
        Order("ARK3(2)", 3.0),
        Order("ARK4(3)", 4.0),
        Order("ARK5(4)", 5.0),
        Stiff("HIRES, y1 at 321.8122, ARK4(3) at 1e-6", new Hires(), 0),
        Stiff("HIRES, y5 at 321.8122, ARK4(3) at 1e-6", new Hires(), 4),
        Stiff("van der Pol, mu 1000, y at 2000, ARK4(3) at 1e-6", new VanDerPol(), 0),
        Tight("Pleiades, x1 at 3, ARK5(4) at 1e-12", new Pleiades(), 1e-7, "Hairer, Norsett, Wanner, test problem Pleiades, as in several solver test suites, read second-hand", 1e-7),
        Tight("Arenstorf orbit, x after one turn, ARK5(4) at 1e-12", new Arenstorf(), 1e-5, Hairer + ", p. 129, read second-hand", 1e-5),
        Tight("Brusselator, y1 at 20, ARK5(4) at 1e-12", new Brusselator(), 1e-10, Hairer + ", from memory; computed here again"),
        Tight("DETEST A3, y at 20, ARK5(4) at 1e-12", new Detest(3), 1e-9, "Hull and others, SIAM J. Numer. Anal. 9, 1972, problem from memory; end value computed here"),
        Tight("DETEST A5, y at 20, ARK5(4) at 1e-12", new Detest(5), 1e-9, "Hull and others, SIAM J. Numer. Anal. 9, 1972, problem from memory; end value computed here"),
        Bounce(1, 4.081632653),
        Bounce(5, 16.714693878),
        new("bouncing ball from 10 m, 15 m/s, restitution 0.8: end of all bounces", "s", 20.357636989, 1e-4, "closed form, computed here", () => EventFinderTests.Bounce(10.0, 15.0, 9.81, 0.8, 60)[^1]),
    ];
}
