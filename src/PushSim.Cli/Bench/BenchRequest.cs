using PushSim.Scenarios.Bench;

namespace PushSim.Cli.Bench;

/// <summary>What is asked of `bench`.</summary>
/// <param name="Port">Name of the port; "-" for standard input.</param>
/// <param name="Baud">Bits a second [1/s].</param>
/// <param name="Settings">How the lines are taken.</param>
/// <param name="Seconds">When it ends by itself [s]; null: never.</param>
/// <param name="Output">What is printed and written.</param>
internal sealed record BenchRequest(string Port, int Baud, BenchSettings Settings, double? Seconds, OutputRequest Output)
{
    /// <summary>Port that stands for standard input.</summary>
    public const string Input = "-";

    /// <summary>The tyre; null: nothing is noted.</summary>
    public string? Tyre { get; init; }

    /// <summary>The floor.</summary>
    public string Floor { get; init; } = "";

    /// <summary>How the floor is.</summary>
    public string State { get; init; } = "";

    /// <summary>Load on the tested tyres [N]; null: the robot's.</summary>
    public double? Load { get; init; }

    /// <summary>File or name of the robot; null: none.</summary>
    public string? Robot { get; init; }

    /// <summary>The notebook; null: that of the garage.</summary>
    public string? Notebook { get; init; }

    /// <summary>Readings a second of lines without times [1/s]; null: they are timed as they come.</summary>
    public double? Rate => Settings.Log.Rate;
}
