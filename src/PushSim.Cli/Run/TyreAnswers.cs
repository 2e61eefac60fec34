using PushSim.Analysis.Wear;
using PushSim.Scenarios;
using PushSim.Scenarios.Shelf;

namespace PushSim.Cli.Run;

/// <summary>What a run says about its tyres: wear, grip over many runs, the shelf's materials on the same robot. Each null or empty where it does not apply.</summary>
internal sealed record TyreAnswers
{
    public WearReport? Wear { get; init; }

    public GripSeries? Grip { get; init; }

    public IReadOnlyList<RankedTyre> Ranking { get; init; } = [];

    /// <summary>Names of the wheels in the order of the grip series.</summary>
    public IReadOnlyList<string> WheelNames { get; init; } = [];

    /// <summary>Wear for a turn or where the file asks, grip where the file asks, the ranking if it is wanted.</summary>
    public static TyreAnswers Of(RunResult run, string file, ReadOptions options, bool rank, CancellationToken cancel)
    {
        ScenarioSettings s = run.Scenario;
        bool isTurn = s.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn;
        bool isAsked = s.TyreLife is not null || rank;
        if (run.Status != RunStatus.Finished || !(isTurn || isAsked))
        {
            return new TyreAnswers();
        }

        bool hasWear = s.Robot.Wheels.Any(w => w.Tyre.SpecificWear > 0.0);
        return new TyreAnswers
        {
            Wear = hasWear ? WearReport.Of(run, StraightDrive.Run(s, cancel)) : null,
            Grip = s.TyreLife is null ? null : GripSeries.Of(s, run, cancel),
            Ranking = rank ? RankedTyre.Rank(Materials(file, options), s.TyreLife is not null, cancel) : [],
            WheelNames = [.. s.Robot.Wheels.Select(w => w.Name)],
        };
    }

    /// <summary>Writes its pictures; returns their paths.</summary>
    public IEnumerable<string> WritePlots(OutputFolder folder) => Plots().Where(p => p.Plot is not null).SelectMany(p => folder.WritePicture(p.Name, p.Plot!));

    /// <summary>The same pictures for a page.</summary>
    public IReadOnlyList<ReportFigure> Figures() =>
    [
        .. Wear is null ? [] : TyrePlots.WearFigures(Wear), .. Grip is null ? [] : TyrePlots.GripFigures(Grip, WheelNames), .. TyrePlots.RankingFigures(Ranking),
    ];

    private IEnumerable<(string Name, PlotSheet? Plot)> Plots()
    {
        if (Wear is not null)
        {
            yield return ("wear", TyrePlots.OfWear(Wear));
        }

        if (Grip is not null)
        {
            yield return ("grip", TyrePlots.OfGrip(Grip, WheelNames));
        }

        if (Ranking.Count > 0)
        {
            yield return ("tyres", TyrePlots.OfRanking(Ranking));
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
