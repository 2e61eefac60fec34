namespace PushSim.Scenarios.Toml;

/// <summary>Tells a table of readings, given in place of a file, from a file with mistakes.</summary>
internal static class ReadingsTable
{
    /// <summary>True after a complaint that a text that is no TOML is a table of readings: its name says so, or no line of it could be one of a robot or scenario.</summary>
    public static bool IsOne(Complaints complaints, SourceFile file)
    {
        bool isNamedSo = Path.GetExtension(file.Name).ToUpperInvariant() is ".CSV" or ".TSV" or ".LOG";
        if (!isNamedSo && file.Text.Split('\n').Any(l => l.Contains('=', StringComparison.Ordinal) || l.TrimStart().StartsWith('[')))
        {
            return false;
        }

        complaints.Error(new Place(file, 1, 1, 1), "this is no robot or scenario file" + (isNamedSo ? " but a table or log" : ": no line of it has the form key = value"), "a log of a load cell goes to pushsim fit; a scenario names it under [measured]");
        return true;
    }
}
