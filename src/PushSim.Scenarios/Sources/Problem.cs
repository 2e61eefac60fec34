namespace PushSim.Scenarios.Sources;

/// <summary>One complaint about a file, with its place.</summary>
/// <param name="File">File as the user named it, or as its including file names it.</param>
/// <param name="Line">Line, from 1; 0 when the complaint is about the file as a whole.</param>
/// <param name="Column">Column, from 1; 0 when the complaint is about the file as a whole.</param>
/// <param name="Severity">Error or warning.</param>
/// <param name="Message">What is wrong, lower case, one cause.</param>
/// <param name="Help">How to mend it; empty if the message says it all.</param>
public sealed record Problem(string File, int Line, int Column, Severity Severity, string Message, string Help)
{
    /// <summary>The line of the file, without control characters; empty when there is none.</summary>
    public string SourceLine { get; init; } = "";

    /// <summary>Characters to underline from <see cref="Column"/> on [1].</summary>
    public int Length { get; init; } = 1;

    /// <summary>The usual one-line form, file:line:column: error: message.</summary>
    public override string ToString() =>
        Line > 0
            ? FormattableString.Invariant($"{File}:{Line}:{Column}: {Word}: {Message}")
            : $"{File}: {Word}: {Message}";

    private string Word => Severity == Severity.Error ? "error" : "warning";
}
