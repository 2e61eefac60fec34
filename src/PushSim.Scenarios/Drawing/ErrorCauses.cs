using PushSim.Analysis.Chance;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Drawing;

/// <summary>
/// What makes the errors of drawn values, the same for every command: which of them have a cause in common, and which are unknown once and which vary each time. Grip of the floor and of the day is a value
/// of its own (floor.friction) and so common to all tyres anyway. That a rubber slides with at most what it holds is the readers' rule (TyreReader).
/// </summary>
internal static class ErrorCauses
{
    // Share of the variance that two robots on one material of the shelf have in common: what the shelf does not know of the material on this floor; the rest is lot, cover and print (estimate) [1].
    private const double SharedOfMaterial = 0.7;

    // The same of two motors, controllers or packs of one kind: lots differ by about as much as pieces of a lot (estimate) [1].
    private const double SharedOfPart = 0.5;

    // How much the ratio of kinetic to static friction is off, as a share (estimate: 0.70 of EN 12195-1 and 0.75 of the UNECE CTU Code for the same pairs are 7 % apart) [1].
    private const double OffInRatio = 0.10;

    // Least correlation of the two frictions of a tyre: what makes one pull grip makes both (estimate) [1].
    private const double LeastTogether = 0.5;

    private const string Static = "static_friction";
    private const string Kinetic = "kinetic_friction";

    /// <summary>The quantities of drawn values, in their order.</summary>
    /// <param name="values">The values.</param>
    public static IReadOnlyList<DrawnQuantity> Quantities(IReadOnlyList<TolerancedValue> values) => [.. values.Select(v => Quantity(v, PartnerOf(values, v)))];

    private static DrawnQuantity Quantity(TolerancedValue v, TolerancedValue? partner)
    {
        IReadOnlyList<DrawFactor> causes = partner is null ? Of(v) : Together(v, partner);
        return new DrawnQuantity(v.Key, v.Part, v.OwnShare, v.Middle, v.Tolerance, v.Spread, v.Least, v.Most) { Factors = DrawnQuantity.OfParts(causes, v.Key, v.Part, v.OwnShare) };
    }

    private static IReadOnlyList<DrawFactor> Of(TolerancedValue v)
    {
        if (v.Shelf.Length == 0 || !(v.IsOfShelf || v.IsOfClass))
        {
            return [new DrawFactor(v.Key, 1.0, IsEachTime(v))];
        }

        string[] path = v.Key.Split('.');
        bool isTyre = path.Contains("tyre");
        double shared = isTyre ? SharedOfMaterial : SharedOfPart;
        return
        [
            new DrawFactor($"{path[^1]} of every {v.Shelf}", Math.Sqrt(shared), IsEachTime(v)),
            new DrawFactor(v.Key, Math.Sqrt(1.0 - shared), IsEachTime(v)),
        ];
    }

    // kinetic friction: correlated so that its ratio to static is off by its own share, and its own tolerance stays what it is
    private static IReadOnlyList<DrawFactor> Together(TolerancedValue kinetic, TolerancedValue held)
    {
        (double k, double s) = (kinetic.Tolerance / kinetic.Middle, held.Tolerance / held.Middle);
        double together = Math.Clamp(((k * k) + (s * s) - (OffInRatio * OffInRatio)) / (2.0 * k * s), LeastTogether, 1.0);
        return [.. Of(held).Select(f => f.Weighing(f.Weight * together)), .. together < 1.0 ? [new DrawFactor(kinetic.Key, Math.Sqrt(1.0 - (together * together)))] : Array.Empty<DrawFactor>()];
    }

    // the static friction of the same tyre; normal both, since only normal scores add up
    private static TolerancedValue? PartnerOf(IReadOnlyList<TolerancedValue> values, TolerancedValue v) => !v.Key.EndsWith("." + Kinetic, StringComparison.Ordinal) || v.Middle <= 0.0 ? null
        : values.FirstOrDefault(o => o.Part == v.Part && o.Middle >= v.Middle && o.Key == v.Key[..^Kinetic.Length] + Static);

    // start, sticks, charge and dust are others in each match; what robots and floor are made of is not
    private static bool IsEachTime(TolerancedValue v)
    {
        string key = v.Key;
        bool isOfScene = v.Owner.Length == 0 && (key.StartsWith("manoeuvre.", StringComparison.Ordinal) || key.StartsWith("opponent.", StringComparison.Ordinal) || key.StartsWith("shove.", StringComparison.Ordinal) || key == "floor.dust");
        return isOfScene || key.EndsWith("battery.charge", StringComparison.Ordinal);
    }
}
