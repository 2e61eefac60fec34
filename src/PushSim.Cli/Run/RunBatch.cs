using System.Diagnostics;
using PushSim.Analysis;
using PushSim.Analysis.Limits;
using PushSim.Analysis.Turning;

namespace PushSim.Cli.Run;

/// <summary>All runs of a `run` command, and what they cost.</summary>
internal sealed class RunBatch : IDisposable
{
    private readonly bool _isWhole;
    private readonly TextWriter? _progress;
    private readonly ProgressLine _line;
    private readonly Lock _one = new();
    private readonly WorkBudget _all;
    private double _milliseconds = double.NaN;
    private long _before;
    private bool _isLooking;

    /// <param name="progress">Where it says how far it is; null: nowhere.</param>
    /// <param name="isWhole">Whether nothing is left out, whatever work it takes.</param>
    /// <param name="designs">Designs that are looked at [1].</param>
    /// <param name="cancel">Stops the work.</param>
    public RunBatch(TextWriter? progress, bool isWhole, int designs, CancellationToken cancel)
    {
        (_progress, _isWhole) = (progress, isWhole);
        _line = new ProgressLine(progress ?? TextWriter.Null, "evaluations of the closer look", isWhole ? 0 : designs * CloserLook.UsualWork, isQuiet: progress is null) { IsMost = true };
        _all = new WorkBudget(long.MaxValue, cancel) { Progress = Step };
    }

    /// <summary>A run; the first one's time is told.</summary>
    public RunResult Run(ScenarioSettings scenario)
    {
        long start = Stopwatch.GetTimestamp();
        RunResult result = Simulator.Run(scenario, _all.Cancel);
        _all.Add(result.RhsEvaluations);
        _milliseconds = double.IsNaN(_milliseconds) ? Stopwatch.GetElapsedTime(start).TotalMilliseconds : _milliseconds;
        return result;
    }

    /// <summary>A run looked at.</summary>
    /// <param name="result">The run.</param>
    /// <param name="drawn">Its matches with drawn values; null: they are not played.</param>
    public RunResult Look(RunResult result, IMatchSource? drawn = null)
    {
        (_before, _isLooking) = (_isLooking ? _before : _all.Done, true);
        return PlausibilityFinder.Review(CloserLook.Review(result, Limited(CloserLook.UsualWork), drawn));
    }

    /// <summary>What it says about its tyres.</summary>
    public TyreAnswers Tyres(RunResult result, string file, ReadOptions options, bool rank)
    {
        Dispose();
        return TyreAnswers.Of(result, file, options, rank, _all, _isWhole ? long.MaxValue : CloserLook.UsualWork, _progress);
    }

    /// <summary>A stability map.</summary>
    public TurnMap Map(string file, ReadOptions options, MapAxis x, MapAxis y, string robot, TextWriter error)
    {
        Dispose();
        return TurnMap.Compute(file, options, x, y, robot, error, _progress is null, Limited(StabilityMap.UsualWork));
    }

    /// <summary>The cost so far.</summary>
    public RunCost Cost() => new(_milliseconds, CommandClock.Milliseconds, _all.Done);

    /// <summary>Takes its progress off the terminal.</summary>
    public void Dispose()
    {
        lock (_one)
        {
            _isLooking = false;
            _line.End();
        }
    }

    private WorkBudget Limited(long most) => _all.Limited(_isWhole ? long.MaxValue : most);

    // runs end on several threads
    private void Step(long done)
    {
        lock (_one)
        {
            if (_isLooking)
            {
                _line.StepTo(done - _before);
            }
        }
    }
}
