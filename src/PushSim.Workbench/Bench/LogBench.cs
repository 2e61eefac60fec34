using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Files;
using PushSim.Scenarios.Editing;
using PushSim.Scenarios.Studies;
using PushSim.Words.Fits;
using PushSim.Words.Tables;
using PushSim.Words.Terms;
using PushSim.Workbench.Designs;

namespace PushSim.Workbench.Bench;

/// <summary>A log of pulls that was dropped or pasted: fitted as the command `fit` does, and told for the page.</summary>
internal static class LogBench
{
    // Points of a curve that a screen can show [1].
    private const int MostPoints = 800;

    /// <summary>Fits a log.</summary>
    /// <param name="text">Its text, CSV.</param>
    /// <param name="name">Name of the file it came from; it names the tyre.</param>
    /// <param name="design">The open files, whose robot was pulled; null for none.</param>
    /// <param name="rows">Their values.</param>
    /// <param name="wrong">Why there is no fit; null if there is one.</param>
    /// <param name="cancel">Ends it.</param>
    public static LogMessage? Fit(string text, string name, Design? design, IReadOnlyList<EditRow> rows, out Problem? wrong, CancellationToken cancel)
    {
        string tyre = string.Concat(Path.GetFileNameWithoutExtension(name).Where(c => char.IsLetterOrDigit(c) || c is ' ' or '-' or '_')) is { Length: > 0 and < 60 } own ? own : "tyre";
        string path = Path.Combine(Path.GetTempPath(), $"pushsim-{Guid.NewGuid():N}.csv");
        try
        {
            byte[] bytes = Encoding.UTF8.GetBytes(text);
            WriteGate.Create(path, s => s.Write(bytes));
            FitResult fit = LogFit.Of(new FitRequest { Files = [path], RobotFile = design?.Shown, Garage = design?.Garage, Tyre = tyre }, null, cancel);
            wrong = fit.Problems.FirstOrDefault(p => p.Severity == Severity.Error) is { } problem ? problem with { File = name, Message = problem.Message.Replace(path, name, StringComparison.Ordinal) }
                : fit.Lack is not null || fit.Fits.Count == 0 ? new Problem(name, 0, 0, Severity.Error, "the load on the tested tyres is not known", "open the robot that was pulled") : null;
            return wrong is null ? Message(fit, rows) : null;
        }
        finally
        {
            if (Disk.Look(path) == FileKind.File)
            {
                Disk.Delete(path);
            }
        }
    }

    /// <summary>A value with its tolerance, as a file would have it.</summary>
    public static string Value(Interval interval)
    {
        double half = interval.IsBounded ? 0.5 * (interval.High - interval.Low) : 0.0;
        return half > 0.0 ? string.Create(CultureInfo.InvariantCulture, $"{interval.Value:0.000} ± {half:0.000}") : interval.Value.ToString("0.000", CultureInfo.InvariantCulture);
    }

    private static LogMessage Message(FitResult fit, IReadOnlyList<EditRow> rows)
    {
        AnswerCard card = FitCard.Of(fit.Fits, FitWords.Verdict(fit.Fits, fit.Comparison), fit.Comparison);
        List<LogCurve> curves = [];
        List<LogPull> pulls = [];
        foreach (TyreFit tyre in fit.Fits)
        {
            foreach (FoundTrace trace in tyre.Traces)
            {
                pulls.AddRange(trace.Pulls.Select((p, i) => Pull(tyre, trace, p, i, curves.Count)));
                curves.Add(Curve(tyre.Name, trace));
            }
        }

        return new LogMessage(
            card.Answer, card.Facts, Clauses.Sentence(card.Sure), Clauses.Sentence(card.Next), [.. fit.Fits.SelectMany(f => Tyres(f, rows))], pulls, curves.Count > 0 ? curves[0] : null, curves,
            string.Join('\n', fit.Tables.Select(t => t.Text)), [.. fit.Notes, .. fit.Fits.SelectMany(PullWords.Warnings)]);
    }

    private static IEnumerable<LogTyre> Tyres(TyreFit fit, IReadOnlyList<EditRow> rows)
    {
        if (fit.KineticFriction is Interval sliding)
        {
            yield return new LogTyre(fit.Name, "sliding grip", Row(rows, fit.Name, "kinetic_friction"), Value(sliding));
        }

        yield return new LogTyre(fit.Name, "grip when it lets go", Row(rows, fit.Name, "static_friction"), Value(fit.StaticFriction));
    }

    // the robot's tyre of that name, else its only one
    private static string? Row(IReadOnlyList<EditRow> rows, string tyre, string key)
    {
        EditRow[] own = [.. rows.Where(r => r.Owner == "robot" && r.Definition.Section == "tyre" && r.Definition.Name == key && r.Members.Count == 0)];
        EditRow? row = own.FirstOrDefault(r => string.Equals(r.Path, $"tyre.{tyre}.{key}", StringComparison.OrdinalIgnoreCase)) ?? (own.Length == 1 ? own[0] : null);
        return row is null ? null : StateMaker.KeyOf(row);
    }

    private static LogPull Pull(TyreFit tyre, FoundTrace trace, FoundPull pull, int place, int curve)
    {
        double sliding = pull.Plateau?.Value ?? double.NaN;
        string words = string.Create(CultureInfo.InvariantCulture, $"pull {place + 1}: lets go at {pull.Breakaway.Value:0.00} N{(double.IsNaN(sliding) ? "" : $", slides at {sliding:0.00} N")}");
        string by = tyre.Limit.By switch { BindingKind.Tyre => "tyre", BindingKind.Motor => "motor", _ => "unclear" };
        return new LogPull(words, by, trace.Trace.Time[pull.Start], trace.Trace.Time[pull.End], pull.Breakaway.Value, double.IsNaN(sliding) ? null : sliding, pull.Plateau is null, pull.Plateau is null ? "it was not seen sliding" : "", curve);
    }

    private static LogCurve Curve(string name, FoundTrace trace)
    {
        int length = trace.Trace.Time.Length;
        int stride = Math.Max(1, length / MostPoints);
        int[] samples = [.. Enumerable.Range(0, (length + stride - 1) / stride).Select(i => i * stride)];
        return new LogCurve([.. samples.Select(i => Math.Round(trace.Trace.Time[i], 4))], [.. samples.Select(i => Math.Round(trace.Trace.Force[i], 4))], "N", name);
    }
}
