using PushSim.Analysis.Wear;
using PushSim.Scenarios;
using PushSim.Scenarios.Shelf;

namespace PushSim.Cli.Run;

/// <summary>What a run says about its tyres: wear, grip over many runs, the shelf's materials on the same robot. Each null or empty where it does not apply.</summary>
internal sealed record TyreAnswers
{
    public WearResult? Wear { get; init; }

    public GripSeries? Grip { get; init; }

    public IReadOnlyList<RankedTyre> Ranking { get; init; } = [];

    /// <summary>Whether the grip would have taken more work than it has.</summary>
    public bool IsGripCut { get; init; }

    /// <summary>Names of the wheels in the order of the grip series.</summary>
    public IReadOnlyList<string> WheelNames { get; init; } = [];

    /// <summary>Its pictures, each with the name of its file.</summary>
    public IEnumerable<(string Name, PlotSheet Plot)> Plots
    {
        get
        {
            (string Name, PlotSheet? Plot)[] all =
            [
                ("wear", Wear is null ? null : TyrePlots.OfWear(Wear)), ("grip", Grip is null ? null : TyrePlots.OfGrip(Grip, WheelNames)), ("tyres", TyrePlots.OfRanking(Ranking)),
            ];
            return all.Where(p => p.Plot is not null).Select(p => (p.Name, p.Plot!));
        }
    }

    /// <summary>Wear for a turn or where the file asks, grip where the file asks, the ranking if it is wanted.</summary>
    /// <param name="run">The run.</param>
    /// <param name="file">Its file.</param>
    /// <param name="options">How it is read.</param>
    /// <param name="rank">Whether the ranking is wanted.</param>
    /// <param name="work">What evaluations are booked to.</param>
    /// <param name="most">Evaluations for each part [1].</param>
    /// <param name="progress">Where the ranking says how far it is; null: nowhere.</param>
    public static TyreAnswers Of(RunResult run, string file, ReadOptions options, bool rank, WorkBudget work, long most, TextWriter? progress)
    {
        ScenarioSettings s = run.Scenario;
        bool isTurn = s.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn;
        bool isAsked = s.TyreLife is not null || rank;
        if (run.Status != RunStatus.Finished || !(isTurn || isAsked))
        {
            return new TyreAnswers();
        }

        bool hasWear = s.Robot.Wheels.Any(w => w.Tyre.SpecificWear > 0.0);
        bool isCut = false;
        return new TyreAnswers
        {
            Wear = hasWear ? WearResult.Of(run, StraightDrive.Run(s, work.Limited(most))) : null,
            Grip = s.TyreLife is null ? null : GripSeries.Of(s, run, work.Limited(most), out isCut),
            IsGripCut = isCut,
            Ranking = rank ? Ranked(file, options, s.TyreLife is not null, work, most, progress) : [],
            WheelNames = [.. s.Robot.Wheels.Select(w => w.Name)],
        };
    }

    private static IReadOnlyList<RankedTyre> Ranked(string file, ReadOptions options, bool withGrip, WorkBudget work, long most, TextWriter? progress)
    {
        var line = new ProgressLine(progress ?? TextWriter.Null, "materials ranked", PartShelf.Tyres.Parts.Count, isQuiet: progress is null);
        var one = new Lock();
        try
        {
            return RankedTyre.Rank(Materials(file, options), withGrip, work, most, OneDone);
        }
        finally
        {
            line.End();
        }

        // materials end on several threads
        void OneDone()
        {
            lock (one)
            {
                line.Step();
            }
        }
    }

    private static IEnumerable<(string Name, ScenarioSettings? Scenario, string Reason)> Materials(string file, ReadOptions options)
    {
        foreach (ShelfPart part in PartShelf.Tyres.Parts)
        {
            ReadResult read = ScenarioReader.Read(file, options with { TyreMaterial = part.Name });
            Problem? first = read.Problems.FirstOrDefault(p => p.Severity == Severity.Error);
            yield return (part.Name, read.Scenario, first is null ? "" : $"{first.Message}; {first.Help}");
        }
    }
}
