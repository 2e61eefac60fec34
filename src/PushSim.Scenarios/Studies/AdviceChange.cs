namespace PushSim.Scenarios.Studies;

/// <summary>What may be changed about a robot.</summary>
/// <param name="Kind">What is changed: changes of one kind do not go together.</param>
/// <param name="Name">What is done, in words.</param>
public sealed record AdviceChange(string Kind, string Name)
{
    /// <summary>Where or which way, the end of its name; changes that differ in nothing else and do alike are told as one. Empty: it is told by itself.</summary>
    public string Place { get; init; } = "";

    /// <summary>Values set anew in the files.</summary>
    public IReadOnlyList<(string Path, string Value)> Set { get; init; } = [];

    /// <summary>Material of the shelf that its tyres are made of, size kept; null: their own.</summary>
    public string? Material { get; init; }

    /// <summary>What becomes of the robot once its values are drawn; null: nothing.</summary>
    public Func<RobotSettings, RobotSettings>? Made { get; init; }

    /// <summary>What the robot weighs more [g]; null if not known.</summary>
    public double? Grams { get; init; }

    /// <summary>What it costs, in the user's currency [1]; null if not known.</summary>
    public double? Price { get; init; }

    /// <summary>This change and others that differ in their place only, told as one.</summary>
    /// <param name="others">The others.</param>
    public AdviceChange OrAt(IReadOnlyList<AdviceChange> others)
    {
        string[] places = [Place, .. others.Select(o => o.Place)];
        return others.Count == 0 ? this : this with { Name = $"{Name[..^Place.Length]}{string.Join(", ", places[..^1])} or {places[^1]}" };
    }

    /// <summary>Both changes at once.</summary>
    public AdviceChange With(AdviceChange other)
    {
        Func<RobotSettings, RobotSettings>? first = Made, second = other.Made;
        return new AdviceChange($"{Kind}+{other.Kind}", $"{Name}, and {other.Name}")
        {
            Set = [.. Set, .. other.Set], Material = Material ?? other.Material, Made = first is null ? second : second is null ? first : r => second(first(r)), Grams = Grams + other.Grams, Price = Price + other.Price,
        };
    }
}
