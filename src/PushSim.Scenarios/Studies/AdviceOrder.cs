using PushSim.Analysis.Statistics;

namespace PushSim.Scenarios.Studies;

/// <summary>The one order of advised changes, for sentence, table, picture, JSON and page alike.</summary>
public sealed record AdviceOrder
{
    // A change that adds less counts as if it added this much, so that among free ones the larger gain goes first [g], [1].
    private const double LeastGrams = 1.0, LeastPrice = 0.5;

    private AdviceOrder(string name) => Name = name;

    /// <summary>By points a gram.</summary>
    public static AdviceOrder Gram { get; } = new("gram");

    /// <summary>By points for its price.</summary>
    public static AdviceOrder Price { get; } = new("price");

    /// <summary>By points alone.</summary>
    public static AdviceOrder Points { get; } = new("points");

    /// <summary>All orders.</summary>
    public static IReadOnlyList<AdviceOrder> All { get; } = [Gram, Price, Points];

    /// <summary>How the command line names it.</summary>
    public string Name { get; }

    /// <summary>The order in words.</summary>
    public string Words => this == Points ? "Order: sure gains first, most points on top; last what may be chance."
        : this == Gram ? "Order: sure gains first, most points a gram on top (under 1 g counts as 1 g), then unknown mass; last what may be chance."
        : "Order: sure gains first, most points for the price on top (under 0.5 counts as 0.5), then unknown price; last what may be chance.";

    /// <summary>The changes in this order.</summary>
    public IReadOnlyList<(AdviceChange Change, Interval Gain, long Matches)> Of(AdviceResult result) =>
        [.. result.Changes.OrderByDescending(c => IsSure(c.Gain)).ThenByDescending(c => IsSure(c.Gain) && Cost(c.Change) is not null).ThenByDescending(c => IsSure(c.Gain) && Worth(c.Change, c.Gain) is double w ? w : c.Gain.Value)];

    /// <summary>Whether a gain is more than chance.</summary>
    public static bool IsSure(Interval gain) => gain.Low > 0.0;

    /// <summary>Gain for each gram or unit of price; the gain itself by points; null where the cost is not known [1/g], [1].</summary>
    public double? Worth(AdviceChange change, Interval gain) => this == Points ? gain.Value : Cost(change) is double cost ? gain.Value / Math.Max(this == Gram ? LeastGrams : LeastPrice, cost) : null;

    private double? Cost(AdviceChange change) => this == Gram ? change.Grams : this == Price ? change.Price : 0.0;
}
