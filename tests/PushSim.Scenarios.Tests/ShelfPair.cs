using PushSim.Analysis.Chance;
using PushSim.Scenarios.Drawing;

namespace PushSim.Scenarios.Tests;

/// <summary>A shipped robot against itself with other tyres, and its draws.</summary>
internal sealed class ShelfPair : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pushsim-pair-").FullName;

    /// <summary>A pair whose tyres have these lines in place of their own friction.</summary>
    public ShelfPair(string friction)
    {
        string robot = File.ReadAllText(Path.Combine(DrawingTests.Folder(), "robots", "mole.toml"));
        string[] lines = [.. robot.Split('\n').Where(l => !l.StartsWith("static_friction", StringComparison.Ordinal) && !l.StartsWith("kinetic_friction", StringComparison.Ordinal))];
        File.WriteAllText(Path.Combine(_folder, "mole.toml"), string.Join('\n', lines).Replace("name = \"soft\"", $"name = \"soft\"\n{friction}", StringComparison.Ordinal));
        DrawableScenario scenario = DrawableScenario.OfPair(Path.Combine(_folder, "mole.toml"), Path.Combine(_folder, "mole.toml")).Scenario!;
        Source = new FileMatchSource(scenario, new ContestKey(1, scenario.Label));
    }

    public FileMatchSource Source { get; }

    public double Value(string key, long number) => Source.Values(number)[Source.Quantities.Select((q, i) => (q, i)).Single(q => q.q.Key == key && q.q.Part.Length == 0).i];

    public double Correlation(string one, string other, int draws)
    {
        double[] x = [.. Enumerable.Range(0, draws).Select(n => Value(one, n))];
        double[] y = [.. Enumerable.Range(0, draws).Select(n => Value(other, n))];
        (double mx, double my) = (x.Average(), y.Average());
        return x.Zip(y, (a, b) => (a - mx) * (b - my)).Sum() / Math.Sqrt(x.Sum(a => (a - mx) * (a - mx)) * y.Sum(b => (b - my) * (b - my)));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
