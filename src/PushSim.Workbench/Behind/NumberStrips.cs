using PushSim.Scenarios.Editing;
using PushSim.Words.Answers;
using PushSim.Words.Matches;
using PushSim.Workbench.Designs;

namespace PushSim.Workbench.Behind;

/// <summary>Strips of what is no contest: one number at each place.</summary>
internal static class NumberStrips
{
    /// <summary>Computes them and tells each.</summary>
    /// <param name="job">The job.</param>
    /// <param name="rows">The values.</param>
    /// <param name="asked">The number.</param>
    /// <param name="at">Its value with a value elsewhere; null where there is none. Called from several threads.</param>
    /// <param name="tell">Takes a strip.</param>
    /// <param name="cancel">Ends it.</param>
    public static void Tell(BehindJob job, IReadOnlyList<EditRow> rows, Measure asked, Func<EditRow, double, double?> at, Action<StripMessage> tell, CancellationToken cancel)
    {
        foreach (EditRow row in rows)
        {
            double[] places = [.. row.Places(StripMaker.Count)];
            double?[] values = new double?[places.Length];
            Parallel.For(0, places.Length, new ParallelOptions { CancellationToken = cancel }, i => values[i] = at(row, places[i]));
            cancel.ThrowIfCancellationRequested();
            tell(Message(job, row, asked, places, values));
        }
    }

    private static StripMessage Message(BehindJob job, EditRow row, Measure asked, double[] places, double?[] values)
    {
        string Said(double v) => $"{asked.Shown(v)} {asked.Unit}".TrimEnd();
        double[] known = [.. values.OfType<double>()];
        string key = StateMaker.KeyOf(row);
        double most = known.Length == 0 ? 1.0 : Math.Max(1e-9, known.Max(Math.Abs));
        double? best = asked.Better == Better.Neither || known.Length == 0 ? null : places[Array.IndexOf(values, asked.Better == Better.More ? known.Max() : known.Min())];
        return new StripMessage
        {
            Number = job.Number, Key = key, Mode = "number",
            Points = [.. places.Zip(values, (x, v) => new StripPoint(Math.Round(x, 6), v is double d ? Math.Round(Math.Abs(d) / most, 3) : 0.0, v is null ? "failed" : "value", Short: v is double s ? Said(s) : "cannot be run"))],
            Words = known.Length == 0 ? "no run can be made here" : StripWords.OfNumber(asked.Words, Said(known.Min()), Said(known.Max()), best, row.Unit),
            BeforeX = job.BeforeValues.TryGetValue(key, out double before) ? before : null, Done = true,
        };
    }
}
