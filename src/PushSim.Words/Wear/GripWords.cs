using PushSim.Analysis.Wear;
using PushSim.Words.Tables;

namespace PushSim.Words.Wear;

/// <summary>Grip over runs without wiping, one row a tyre.</summary>
internal static class GripWords
{
    private const string NotKnown = "not known";

    /// <summary>The table; null where of no tyre it is known.</summary>
    /// <param name="tyres">Each tyre's name and its grip; null where that is not known.</param>
    public static AnswerTable? Table(IReadOnlyList<(string Name, GripLife? Life)> tyres)
    {
        if (tyres.Select(t => t.Life).FirstOrDefault(l => l is not null) is not GripLife any)
        {
            return null;
        }

        AnswerTable table = new AnswerTable("Grip over runs").AddColumn("Tyre").AddNumberColumn("clean").AddNumberColumn("after 1 run").AddNumberColumn($"after {GripLife.Six} runs").AddNumberColumn("wipe every [runs]");
        foreach ((string name, GripLife? life) in tyres)
        {
            table.AddRow([name, .. life is null ? [NotKnown, NotKnown, NotKnown, NotKnown] : Cells(life)]);
        }

        return table.AddRemark(
            Text($"Grip: sliding friction of all wheels by their loads, run after run on a floor of dust {any.Dust:0.##} without wiping. Wipe every: the run after which grip has fallen by {100.0 * any.GripLoss:0.#} % (grip_loss of [tyre_life]; 20 % if not given), looked for in {any.Runs} runs. {WearWords.GripLimits}"),
            isAside: true);
    }

    private static string[] Cells(GripLife g) => [Text($"{g.Clean:0.00}"), Text($"{g.AfterOne:0.00}"), Text($"{g.AfterSix:0.00}"), g.WipeEvery is int n ? Text($"{n}") : Text($"over {g.Runs}")];
}
