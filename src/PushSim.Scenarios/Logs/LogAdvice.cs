namespace PushSim.Scenarios.Logs;

/// <summary>What to do about a log that does not say enough: options on the command line, keys in a scenario.</summary>
public sealed record LogAdvice
{
    /// <summary>For a log given on the command line of `fit`.</summary>
    public static LogAdvice OfFit { get; } = new()
    {
        Unit = "add --unit gf (N, gf, kgf, lbf, ozf, mV)", Calibration = "add --calibration \"25 gf/mV\": hang a known weight on the cell and divide it by the change of the reading",
        Reversed = "if the cell is wired the other way round, add --flip", NoSlack = "log some slack before the pull, or add --tare \"0 gf\"", NotSeconds = "--time-unit ms if not", NotMilliseconds = "--time-unit s if not",
        Rate = "say how many readings a second the board prints, for example --rate 80; if each row is a pull of its own, number them in a column \"pull\"",
    };

    /// <summary>For a log that a scenario names in its [measured].</summary>
    public static LogAdvice OfScenario { get; } = new()
    {
        Unit = "give force_unit = \"gf\" in [measured] (N, gf, kgf, lbf, ozf)", Calibration = "turn the readings into N or gf in the log: hang a known weight on the cell and divide it by the change of the reading",
        Reversed = "if the cell is wired the other way round, change the sign of the readings in the log", NoSlack = "log some slack before the pull", NotSeconds = "time_unit = \"ms\" if not", NotMilliseconds = "time_unit = \"s\" if not",
        Rate = "add a column of time to the log",
    };

    /// <summary>Where the unit of force is missing.</summary>
    public required string Unit { get; init; }

    /// <summary>Where a cell was logged in mV.</summary>
    public required string Calibration { get; init; }

    /// <summary>Where a pull reads negative.</summary>
    public required string Reversed { get; init; }

    /// <summary>Where the reading of the slack chain is not known.</summary>
    public required string NoSlack { get; init; }

    /// <summary>Where times were taken as seconds.</summary>
    public required string NotSeconds { get; init; }

    /// <summary>Where times were taken as milliseconds.</summary>
    public required string NotMilliseconds { get; init; }

    /// <summary>Where rows follow each other like one log, without a time.</summary>
    public required string Rate { get; init; }
}
