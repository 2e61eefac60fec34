using PushSim.Scenarios.Editing;

namespace PushSim.Workbench.Behind;

/// <summary>A strip while its matches come in.</summary>
internal sealed class StripState(EditRow row, double[] places)
{
    private int _count;

    public EditRow Row => row;

    /// <summary>Rising values [unit of the row].</summary>
    public double[] Places => places;

    public MatchOutcome[] Outcomes { get; } = new MatchOutcome[places.Length];

    public bool IsFull => _count == places.Length;

    /// <summary>Where the winner changes between two places; the middle of them until it is searched closer.</summary>
    public List<(double Place, int Below, int Above)> Flips { get; private set; } = [];

    /// <summary>Takes a match.</summary>
    public void Put(int place, in MatchOutcome outcome)
    {
        Outcomes[place] = outcome;
        _count++;
        if (IsFull)
        {
            Flips = [.. Pairs().Select(p => (Middle(places[p], places[p + 1]), Winner(Outcomes[p]), Winner(Outcomes[p + 1])))];
        }
    }

    /// <summary>Places behind which the winner is another [1].</summary>
    public IEnumerable<int> Pairs() => Enumerable.Range(0, places.Length - 1).Where(p => Outcomes[p].Status != RunStatus.Failed && Outcomes[p + 1].Status != RunStatus.Failed && Winner(Outcomes[p]) != Winner(Outcomes[p + 1]));

    /// <summary>Between two values, as the slider's ways are.</summary>
    public double Middle(double a, double b) => row.Between(a, b, 0.5);

    /// <summary>Who wins; -1 for nobody [1].</summary>
    public static int Winner(in MatchOutcome outcome) => outcome.Winner;
}
