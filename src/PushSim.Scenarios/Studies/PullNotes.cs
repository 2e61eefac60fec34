using PushSim.Analysis.Fit;
using PushSim.Files;
using PushSim.Scenarios.Notebook;

namespace PushSim.Scenarios.Studies;

/// <summary>Puts good pulls of a bench into the notebook as they end.</summary>
public sealed class PullNotes
{
    private readonly PullRow _alike;
    private readonly LockAsk _ask;

    /// <summary>Begins; nothing is written yet.</summary>
    /// <param name="path">The notebook.</param>
    /// <param name="alike">What all pulls have alike: tyre, robot, floor, its state before the first, load if it is known.</param>
    /// <param name="robot">The robot, whose mass, motors and load are noted; null: none.</param>
    /// <param name="log">The raw log; empty: none.</param>
    /// <param name="ask">Who asks for the notebook's lock.</param>
    public PullNotes(string path, PullRow alike, RobotSettings? robot, string log, LockAsk ask)
    {
        (Path, _ask) = (path, ask);
        _alike = alike with
        {
            Mass = robot?.Chassis.Mass,
            Motors = Motors(robot),
            Load = alike.Load ?? (robot is null ? null : GripLoad.Of(robot, 0.0, isDrag: false).LoadAt(0.0)),
            Source = log.Length == 0 ? "" : System.IO.Path.GetRelativePath(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!, log).Replace('\\', '/'),
        };
    }

    /// <summary>The notebook.</summary>
    public string Path { get; }

    /// <summary>Pulls in it from this bench [1].</summary>
    public int Count { get; private set; }

    /// <summary>Adds a pull. Throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/> where the disk refuses.</summary>
    /// <param name="number">Its number, from 1 [1].</param>
    /// <param name="pull">A good one.</param>
    /// <param name="when">When it was.</param>
    /// <returns>What stands against it; empty: it is on the disk.</returns>
    public string Add(int number, WatchedPull pull, DateTime when)
    {
        IReadOnlyList<Problem> problems = NotebookWriter.Append(
            Path,
            _alike with
            {
                When = when,

                // every pull before it went over the floor too, good or not
                State = _alike.State.Word.Length == 0 ? _alike.State : _alike.State with { Pulls = (_alike.State.Pulls ?? 0.0) + number - 1 },
                Peak = pull.Peak,
                Sliding = pull.Pull!.Plateau!.Value.Value,
                Note = pull.Pull.Quality == BreakawayQuality.FewSamples ? "few readings on the ramp: the peak may be higher" : "",
            },
            _ask);
        Count += problems.Count == 0 ? 1 : 0;
        return problems.Count == 0 ? "" : $"{problems[0].Message}; {problems[0].Help}";
    }

    /// <summary>Motors of a robot, in words; empty without a robot.</summary>
    internal static string Motors(RobotSettings? robot) => robot is null ? "" : string.Join(", ", robot.Drives.SelectMany(d => d.Motors.Select(m => m.Motor.Name)).GroupBy(n => n).Select(g => g.Count() > 1 ? $"{g.Count()} x {g.Key}" : g.Key));
}
