using PushSim.Analysis.Chance;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Editing;

namespace PushSim.Workbench.Behind;

/// <summary>Scenarios of a job with one value elsewhere. Numbers of the files are put in without reading them again; for what no file gives the text is changed and read.</summary>
internal sealed class StripScene(BehindJob job)
{
    private readonly ShiftedMatches? _shifted = ShiftedMatches.Open(job.Design.Shown, job.Design.Options);

    /// <summary>Label of the contest, for its draws.</summary>
    public string Label => _shifted?.Label ?? "";

    /// <summary>The scenario with a value elsewhere; null if it contradicts the others.</summary>
    /// <param name="row">The value's row.</param>
    /// <param name="x">The value [unit of the row].</param>
    public ScenarioSettings? At(EditRow row, double x)
    {
        if (_shifted?.Has(row.DrawnKey) == true)
        {
            return _shifted.At(row.DrawnKey, row.Si(x));
        }

        ScenarioSettings? read = job.Design.With(row, row.Written(x), job.Read)?.Read().Scenario;
        return read is null ? null : read with { Numerics = read.Numerics.ForDraws() };
    }

    /// <summary>A drawn match with a value elsewhere; null if its values contradict each other, or no file gives the value.</summary>
    public ScenarioSettings? Drawn(EditRow row, double x, ContestKey contest, long number) => _shifted?.Has(row.DrawnKey) == true ? _shifted.Drawn(row.DrawnKey, row.Si(x), contest, number) : null;

    /// <summary>Whether drawn matches can have the value elsewhere.</summary>
    public bool HasDrawn(EditRow row) => _shifted?.Has(row.DrawnKey) == true;
}
