using PushSim.Analysis.Sweep;
using PushSim.Analysis.Turning;
using PushSim.Scenarios.Keys;
using PushSim.Words.Sweeps;

namespace PushSim.Cli.Run;

/// <summary>The stability map of `run --map KEY=FROM..TO --map KEY=FROM..TO`.</summary>
/// <param name="X">Along the horizontal axis.</param>
/// <param name="Y">Along the vertical axis.</param>
/// <param name="Map">What was found.</param>
/// <param name="Robot">Name of the robot.</param>
internal sealed record TurnMap(MapAxis X, MapAxis Y, StabilityMap Map, string Robot)
{
    public PlotSheet Plot => StabilityMapPlot.Of(Map, Label(X), Label(Y));

    /// <summary>Reads the two options; null, with what is wrong, if they are no map of this scenario.</summary>
    public static (MapAxis X, MapAxis Y)? Axes(string[] given, string file, ReadOptions options, ScenarioSettings scenario, TextWriter error)
    {
        List<string> problems = [];
        MapAxis?[] axes = [.. given.Select(g =>
        {
            bool isRead = SweepInput.TryParse(g, 2, out SweepInput? input, out SweepFault? fault);
            MapAxis? axis = isRead && g.Contains("..", StringComparison.Ordinal) ? MapAxis.Of(input!) : null;
            if (axis is null)
            {
                problems.Add($"--map: {(isRead ? $"\"{g}\" is no range" : SweepWords.Of(fault!))}: write KEY=FROM..TO, for example \"tyre.soft.body_damping=0.1..3 N s/m\"");
            }

            return axis;
        })];
        if (given.Length != 2)
        {
            problems.Add("a map has two inputs: give --map twice");
        }

        if (scenario.Manoeuvre.Traits.Family != ManoeuvreFamily.Turn)
        {
            problems.Add("--map is for turns: the manoeuvre must be " + TurnMaps.Manoeuvres);
        }

        foreach (string problem in problems)
        {
            error.WriteLine("pushsim: error: " + PlainText.Of(problem));
        }

        if (problems.Count > 0)
        {
            return null;
        }

        IReadOnlyList<Problem> wrong = TurnMaps.Problems(file, axes[0]!, axes[1]!, options);
        ProblemWriter.Write(error, wrong);
        return wrong.Count > 0 ? null : (axes[0]!, axes[1]!);
    }

    public static TurnMap Compute(string file, ReadOptions options, MapAxis x, MapAxis y, string robot, TextWriter error, bool isQuiet, WorkBudget work)
    {
        var progress = new ProgressLine(error, "rows of the map", StabilityMap.UsualRows, isQuiet);
        var one = new Lock();
        try
        {
            return new TurnMap(x, y, TurnMaps.Compute(file, x, y, options, RowDone, work), robot);
        }
        finally
        {
            // an interrupt, too, leaves a clean line
            progress.End();
        }

        // rows end on several threads
        void RowDone()
        {
            lock (one)
            {
                progress.Step();
            }
        }
    }

    private string Label(MapAxis axis) => KeyLabel.Of(axis.Key, Robot) + (axis.Unit.Length == 0 ? "" : $" [{axis.Unit}]");
}
