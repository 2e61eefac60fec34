using PushSim.Scenarios.Scenes;

namespace PushSim.Scenarios.Studies;

/// <summary>The designs that a file is compared with: each of its variants, and another file beside it.</summary>
public static class DesignSides
{
    /// <summary>The file as it is, then its variants in their order, then the file beside it. A robot file beside a scenario is the same scenario with that robot.</summary>
    /// <param name="read">What reading the file gave, without errors.</param>
    /// <param name="file">The file.</param>
    /// <param name="options">How it was read; all are read so.</param>
    /// <param name="beside">Scenario or robot file to compare with; null for none.</param>
    public static IReadOnlyList<DesignSide> Of(ReadResult read, string file, ReadOptions options, string? beside)
    {
        string own = Path.GetFileNameWithoutExtension(file);
        DesignSide[] variants = [.. read.Variants.Select(v => new DesignSide(v, file, options with { Variant = v }))];
        if (beside is null)
        {
            return [new DesignSide(own, file, options) { IsPlain = true }, .. variants];
        }

        // two robots in one scenario are told apart by their names, if these differ
        bool isRobot = !ScenarioReader.IsScenario(beside, options.Garage);
        string? other = isRobot ? ScenarioReader.Check(beside, new ReadOptions { Garage = options.Garage }).Robot?.Name : null;
        bool areRobots = variants.Length == 0 && other is not null && other != read.Robot?.Name;
        return
        [
            new DesignSide(areRobots ? read.Robot!.Name : own, file, options) { IsPlain = !areRobots && isRobot && ScenarioReader.IsScenario(file, options.Garage) }, .. variants,
            isRobot && ScenarioReader.IsScenario(file, options.Garage)
                ? new DesignSide(areRobots ? other! : Path.GetFileNameWithoutExtension(beside), file, options with { Robot = beside })
                : new DesignSide(areRobots ? other! : Path.GetFileNameWithoutExtension(beside), beside, options),
        ];
    }
}
