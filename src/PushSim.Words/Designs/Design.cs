using PushSim.Analysis.Limits;

namespace PushSim.Words.Designs;

/// <summary>One of the designs that are compared.</summary>
/// <param name="Label">What sentences and tables call it: a variant, a scenario or a robot.</param>
/// <param name="Robot">Name of its robot.</param>
/// <param name="Limit">What limits it; null where nothing is told.</param>
public sealed record Design(string Label, string Robot, BindingShares? Limit)
{
    private const string AsItIs = "as it is";

    /// <summary>Whether it is the file as it stands, beside variants of it: then words need no file's name.</summary>
    public bool IsPlain { get; init; }

    /// <summary>Its run; null where the limits are compared.</summary>
    public RunResult? Run { get; init; }

    /// <summary>Its limits; null where runs are compared.</summary>
    public LimitReport? Report { get; init; }

    /// <summary>A run under its label.</summary>
    public static Design Of(string label, RunResult run) => new(label, run.Scenario.Robot.Name, run.Shove is null ? run.Answers.Binding : null) { Run = run };

    /// <summary>Limits under their label.</summary>
    public static Design Of(string label, LimitReport report) =>
        new(label, report.Scenario.Robot.Name, report.Now.Binding is BindingKind kind ? BindingShares.Of(kind) : null) { Report = report };

    /// <summary>"with dull cover "; nothing where the label is the robot itself.</summary>
    internal string With => Label == Robot ? "" : IsPlain ? AsItIs + " " : $"with {Label} ";

    /// <summary>What stands behind "than".</summary>
    internal string Than => Label == Robot ? Robot : IsPlain ? AsItIs : $"with {Label}";

    /// <summary>Its label on the screen.</summary>
    internal string Shown => IsPlain ? AsItIs : Label;
}
