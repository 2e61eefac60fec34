using PushSim.Plotting.Drawing;
using PushSim.Words.Tables;

namespace PushSim.Plotting.Report;

/// <summary>What a command's page says. Every command fills what it has; <see cref="ReportWriter"/> lays it out the same way for all.</summary>
public sealed record ReportPage
{
    /// <summary>The command, for example "run".</summary>
    public required string Command { get; init; }

    /// <summary>What was asked about: a scenario's or a file's name.</summary>
    public required string Subject { get; init; }

    /// <summary>The question, one sentence; empty: the subject heads the page.</summary>
    public string Question { get; init; } = "";

    /// <summary>What is read first.</summary>
    public required AnswerCard Card { get; init; }

    /// <summary>The answer, one sentence.</summary>
    public required string Verdict { get; init; }

    /// <summary>Warnings in plain words.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>The run to replay; null where there is none.</summary>
    public RunResult? Replay { get; init; }

    /// <summary>Which run the replay shows, where the command made more than one; may be empty.</summary>
    public string ReplayNote { get; init; } = "";

    /// <summary>Tables, the most important first.</summary>
    public IReadOnlyList<AnswerTable> Tables { get; init; } = [];

    /// <summary>Text to take over as it stands, for example into a file; empty where there is none.</summary>
    public string Listing { get; init; } = "";

    /// <summary>What the listing is for.</summary>
    public string ListingTitle { get; init; } = "";

    /// <summary>Plots, the most important first.</summary>
    public IReadOnlyList<ReportFigure> Figures { get; init; } = [];

    /// <summary>Values that the files gave.</summary>
    public IReadOnlyList<ReportInput> Inputs { get; init; } = [];

    /// <summary>What was converted or estimated, in sentences.</summary>
    public IReadOnlyList<string> Estimates { get; init; } = [];

    /// <summary>One line about the computation: work, time, energy balance.</summary>
    public string Computation { get; init; } = "";

    /// <summary>What to mind before anybody acts on the page.</summary>
    public required string Cautions { get; init; }

    /// <summary>Writes the page: UTF-8, one file, nothing fetched.</summary>
    /// <param name="stream">Receives the file.</param>
    public void Write(Stream stream)
    {
        using var text = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        new ReportWriter(text, this).Write();
    }
}
