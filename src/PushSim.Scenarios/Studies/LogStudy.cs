using PushSim.Analysis.Compare;
using PushSim.Runs;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Studies;

/// <summary>A scenario file replayed as a log tells, and set beside it; up to three values found on the first part of the log, and judged on the rest.</summary>
/// <param name="file">Scenario file.</param>
/// <param name="options">How it is read.</param>
/// <param name="log">The log.</param>
/// <param name="byWheels">Whether the measured wheels are put in; else the commands are.</param>
public sealed class LogStudy(string file, ReadOptions options, ChannelLog log, bool byWheels)
{
    /// <summary>Most values that are searched at once [1].</summary>
    public const int MostKeys = 3;

    // Widest factor either way, first step of the search as a logarithm, and its last [1].
    private const double Widest = 10.0;
    private const double FirstStep = 0.35;
    private const double LastStep = 2e-3;
    private const int MostRuns = 120;

    // What a run that fails, or is out of range, counts as [1].
    private const double Hopeless = 1e6;

    /// <summary>Runs of the search so far [1].</summary>
    public int Runs { get; private set; }

    /// <summary>The run of a reading of the file.</summary>
    public RunResult Run(ReadResult read, CancellationToken cancel) => Run(read, log, cancel);

    /// <summary>Where each key's search begins; an error's words for the first that has none.</summary>
    /// <param name="read">The file as read.</param>
    /// <param name="keys">Keys of values, with * for every name.</param>
    /// <param name="starts">Their values.</param>
    public static string Starts(ReadResult read, IReadOnlyList<string> keys, out IReadOnlyList<IdentifiedValue> starts)
    {
        List<IdentifiedValue> found = [];
        starts = found;
        foreach (string key in keys)
        {
            InputRow? given = read.Inputs.FirstOrDefault(r => r.Value is not null && IsAlike(key, r));
            string[] parts = key.Split('.');
            KeyDefinition? row = KeyTable.Find(parts[0], parts[^1]);
            if (given is null && row is null)
            {
                return $"--identify {key}: no value of the files has this key";
            }

            (double value, string unit) = given is not null ? (given.Value!.Value, given.Unit) : Example(row!);
            if (!(value > 0.0) || unit == "°C")
            {
                return $"--identify {key}: only a value above zero, and no temperature, can be searched";
            }

            found.Add(new IdentifiedValue(key, unit, value, value, IsAtBound: false));
        }

        return "";
    }

    /// <summary>Finds values by the least sum over the channels of (rms/spread)^2 up to a time, by the simplex of Nelder and Mead over their logarithms.</summary>
    /// <param name="starts">Where it begins.</param>
    /// <param name="until">End of the part that is used [s].</param>
    /// <param name="cancel">Interrupt.</param>
    public IReadOnlyList<IdentifiedValue> Identify(IReadOnlyList<IdentifiedValue> starts, double until, CancellationToken cancel)
    {
        ChannelLog part = log.Between(0.0, until);
        double Misfit(double[] x)
        {
            cancel.ThrowIfCancellationRequested();
            if (Runs >= MostRuns || x.Any(v => Math.Abs(v) > Math.Log(Widest)))
            {
                return Hopeless;
            }

            Runs++;
            ReadResult read = Read(At(starts, x));
            if (read.Scenario is null)
            {
                return Hopeless;
            }

            RunResult run = Run(read, part, cancel);
            IReadOnlyList<ChannelError> errors = LogComparison.Of(run, part);
            return run.Status == RunStatus.Failed || errors.Count == 0 ? Hopeless : errors.Sum(e => Square(e.Rms / Math.Max(e.Spread, 1e-9)));
        }

        return At(starts, ValueSearch.Least(Misfit, starts.Count, FirstStep, LastStep, MostRuns));
    }

    /// <summary>The file read with values in place of its own.</summary>
    public ReadResult Read(IReadOnlyList<IdentifiedValue> values) => ScenarioReader.Read(file, options with { Set = [.. options.Set, .. values.Select(v => (v.Key, FormattableString.Invariant($"{v.After:R} {v.Unit}").TrimEnd()))] });

    private RunResult Run(ReadResult read, ChannelLog part, CancellationToken cancel) =>
        Simulator.Run(byWheels ? LogReplay.ByWheels(read.Scenario!, part) : LogReplay.ByCommands(read.Scenario!, part), cancel);

    private static List<IdentifiedValue> At(IReadOnlyList<IdentifiedValue> starts, double[] x) =>
        [.. starts.Select((s, i) => s with { After = s.Before * Math.Exp(x[i]), IsAtBound = Math.Abs(x[i]) > 0.97 * Math.Log(Widest) })];

    // what a key that no file gives begins with: its record's default, else its example
    private static (double Value, string Unit) Example(KeyDefinition row)
    {
        if (row.OwnDefault is double own && own > 0.0)
        {
            return (own, row.Kind == KeyKind.Quantity && row.Dimension != Dimension.Ratio ? UnitTable.SiName(row.Dimension) : "");
        }

        string text = row.Example.Trim('"');
        return Quantity.TryParse(text, row.Dimension, out Quantity q, out _, out _) ? (q.Value, row.Kind == KeyKind.Quantity && row.Dimension != Dimension.Ratio ? UnitTable.SiName(row.Dimension) : "")
            : double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? (number, "") : (double.NaN, "");
    }

    private static bool IsAlike(string key, InputRow row)
    {
        string[] a = key.Split('.'), b = row.Key.Split('.');
        return row.Owner != "opponent" && a.Length == b.Length && a.Zip(b).All(p => p.First == "*" || p.First == p.Second);
    }

    private static double Square(double v) => v * v;
}
