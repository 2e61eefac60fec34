using PushSim.Analysis.Fit;
using PushSim.Files;
using PushSim.Scenarios.Notebook;
using PushSim.Words.Fits;

namespace PushSim.Cli.Bench;

/// <summary>Puts good pulls into the notebook as they end.</summary>
internal sealed class PullNotes
{
    private readonly BenchRequest _request;
    private readonly LockAsk _ask;
    private readonly RobotSettings? _robot;
    private readonly FloorState _state;
    private readonly string _source;

    private PullNotes(BenchRequest request, string path, RobotSettings? robot, string log, LockAsk ask)
    {
        (_request, Path, _robot, _ask) = (request, path, robot, ask);
        _state = FloorState.Of(request.State);
        _source = log.Length == 0 ? "" : System.IO.Path.GetRelativePath(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!, log).Replace('\\', '/');
    }

    /// <summary>The notebook.</summary>
    public string Path { get; }

    /// <summary>Pulls in it from this bench [1].</summary>
    public int Count { get; private set; }

    /// <summary>The notebook of a bench; null where none is asked for or known.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="robot">The robot; null: none.</param>
    /// <param name="log">The raw log; empty: none.</param>
    /// <param name="ask">Who asks for its lock.</param>
    public static PullNotes? Of(BenchRequest request, RobotSettings? robot, string log, LockAsk ask)
    {
        string? path = request.Notebook ?? (GarageFolder.Of(GarageFolder.Chosen) is { } garage ? System.IO.Path.Combine(garage.Path, NotebookReader.FileName) : null);
        return request.Tyre is null || path is null ? null : new PullNotes(request, path, robot, log, ask);
    }

    /// <summary>Adds a pull.</summary>
    /// <param name="number">Its number, from 1 [1].</param>
    /// <param name="pull">A good one.</param>
    /// <param name="when">When it was.</param>
    /// <returns>What stands against it; empty: it is on the disk.</returns>
    public string Add(int number, WatchedPull pull, DateTime when)
    {
        IReadOnlyList<Problem> problems = NotebookWriter.Append(
            Path,
            new PullRow
            {
                When = when,
                Tyre = _request.Tyre!,
                Robot = _request.Robot ?? "",
                Mass = _robot?.Chassis.Mass,
                Motors = Motors(),
                Floor = _request.Floor,

                // every pull before it went over the floor too, good or not
                State = _state.Word.Length == 0 ? _state : _state with { Pulls = (_state.Pulls ?? 0.0) + number - 1 },
                Load = _request.Load ?? (_robot is null ? null : GripLoad.Of(_robot, 0.0, isDrag: false).LoadAt(0.0)),
                Peak = BenchWords.Peak(pull),
                Sliding = pull.Pull!.Plateau!.Value.Value,
                Source = _source,
                Note = pull.Pull.Quality == BreakawayQuality.FewSamples ? "few readings on the ramp: the peak may be higher" : "",
            },
            _ask);
        Count += problems.Count == 0 ? 1 : 0;
        return problems.Count == 0 ? "" : $"{problems[0].Message}; {problems[0].Help}";
    }

    private string Motors() => _robot is null ? "" : string.Join(", ", _robot.Drives.SelectMany(d => d.Motors.Select(m => m.Motor.Name)).GroupBy(n => n).Select(g => g.Count() > 1 ? $"{g.Count()} x {g.Key}" : g.Key));
}
