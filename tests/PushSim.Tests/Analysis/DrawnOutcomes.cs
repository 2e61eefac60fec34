using PushSim.Analysis.Chance;
using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Tests.Analysis;

/// <summary>Matches whose outcomes are made out of seed and number alone, in a moment, out of turn as lanes end them.</summary>
internal sealed class DrawnOutcomes(ulong seed) : IMatchRunner, IDrawnMatches
{
    /// <summary>How far matches end out of turn [1].</summary>
    public const int Window = 64;

    public int Ran { get; private set; }

    public IReadOnlyList<DrawnQuantity> Quantities { get; } = [new("a", "", 0.0, 0.0, 1.0, DrawShape.Normal, -9.0, 9.0)];

    public ScenarioSettings Middle => throw new NotSupportedException();

    public Precision Precision => Precision.Double;

    public double[] Values(long number) => [Quantities[0].Draw(seed, number)];

    public ScenarioSettings? Match(long number, out string cause) => throw new NotSupportedException();

    public void Run(IMatchSource source, IReadOnlyList<long> numbers, Action<MatchEnd> done, int threads, CancellationToken cancel)
    {
        for (int block = 0; block < numbers.Count; block += Window)
        {
            for (int i = Math.Min(numbers.Count, block + Window) - 1; i >= block && !cancel.IsCancellationRequested; i--)
            {
                Ran++;
                done(End(numbers[i]));
            }
        }
    }

    public MatchEnd End(long number)
    {
        double u = Philox.Uniform(seed, number, 1);
        return u > 0.99 ? MatchEnd.Failed(number, MatchFailure.Draws, "a cause, with \"quotes\"")
            : new MatchEnd(number, u < 0.5 ? 0 : u < 0.9 ? 1 : -1, u < 0.8 ? ShoveEnding.Line : u < 0.9 ? ShoveEnding.Tips : ShoveEnding.Stalemate, u - 0.5, 3.0 * u, BindingKind.Tyre, BindingKind.Motor);
    }
}
