namespace PushSim.Analysis.Chance;

/// <summary>Why a line of a journal is refused.</summary>
/// <param name="File">Name of the journal.</param>
/// <param name="Line">Number of the line, from 1 [1].</param>
/// <param name="Reason">Why.</param>
public sealed record JournalProblem(string File, long Line, string Reason)
{
    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}: {Reason}");
}
