using PushSim.Analysis.Turning;
using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>The stability map of `run --map KEY=FROM..TO --map KEY=FROM..TO`.</summary>
internal sealed class TurnMap
{
    private readonly MapAxis _x;
    private readonly MapAxis _y;
    private readonly StabilityMap _map;

    private TurnMap(MapAxis x, MapAxis y, StabilityMap map) => (_x, _y, _map) = (x, y, map);

    /// <summary>What a person wants to know of it, in a sentence.</summary>
    public string Sentence
    {
        get
        {
            int all = _map.Found.Count();
            (int agree, int made) = _map.Agreement;
            return all == 0
                ? "map: no steady turn was found anywhere in it"
                : string.Create(CultureInfo.InvariantCulture, $"map: {100.0 * _map.Found.Count(p => p.Growth > 0.0) / all:0} % of it chatters by itself; simulated points agree in {agree} of {made}");
        }
    }

    /// <summary>Reads the two options; null, with what is wrong, if they are no map of this scenario.</summary>
    public static (MapAxis X, MapAxis Y)? Axes(string[] given, string file, ReadOptions options, ScenarioSettings scenario, TextWriter error)
    {
        List<string> problems = [];
        MapAxis?[] axes = [.. given.Select(g =>
        {
            MapAxis? axis = MapAxis.Parse(g, out string problem);
            if (axis is null)
            {
                problems.Add("--map " + problem);
            }

            return axis;
        })];
        if (given.Length != 2)
        {
            problems.Add("a map has two inputs: give --map twice");
        }

        if (scenario.Manoeuvre.Traits.Family != ManoeuvreFamily.Turn)
        {
            problems.Add("--map is for turns: the manoeuvre must be " + TurnMaps.Manoeuvres);
        }

        foreach (string problem in problems)
        {
            error.WriteLine("pushsim: error: " + PlainText.Of(problem));
        }

        if (problems.Count > 0)
        {
            return null;
        }

        IReadOnlyList<Problem> wrong = TurnMaps.Problems(file, axes[0]!, axes[1]!, options);
        ProblemWriter.Write(error, wrong);
        return wrong.Count > 0 ? null : (axes[0]!, axes[1]!);
    }

    public static TurnMap Compute(string file, ReadOptions options, MapAxis x, MapAxis y, TextWriter error, bool isQuiet, CancellationToken cancel)
    {
        var progress = new ProgressLine(error, "rows of the map", StabilityMap.UsualRows, isQuiet);
        var one = new Lock();
        try
        {
            return new TurnMap(x, y, TurnMaps.Compute(file, x, y, options, RowDone, cancel));
        }
        finally
        {
            // an interrupt, too, leaves a clean line
            progress.End();
        }

        // rows end on several threads
        void RowDone()
        {
            lock (one)
            {
                progress.Step();
            }
        }
    }

    public IReadOnlyList<string> WriteFiles(OutputFolder folder, bool noPlots) =>
        [folder.Write("map.csv", WriteCsv), .. noPlots ? [] : folder.WritePicture("map", StabilityMapPlot.Of(_map, _x.Title, _y.Title))];

    /// <summary>The map for a page.</summary>
    public IReadOnlyList<ReportFigure> Figures() => StabilityMapPlot.Figures(_map, _x.Title, _y.Title);

    public void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject("map");
        WriteAxis("x", _x, _map.X);
        WriteAxis("y", _y, _map.Y);
        writer.WriteNumber("simulated_points", _map.Agreement.All);
        writer.WriteNumber("simulated_points_that_agree", _map.Agreement.Agree);
        WriteRows("growth_1_per_s", p => p.Growth);
        WriteRows("ring_margin", p => p.RingMargin);
        writer.WriteEndObject();

        void WriteAxis(string name, MapAxis axis, double[] values)
        {
            writer.WriteString(name + "_key", axis.Key);
            writer.WriteString(name + "_unit", axis.Unit);
            JsonReport.WriteNumbers(writer, name, values);
        }

        void WriteRows(string name, Func<StabilityPoint, double> of) => JsonReport.WriteNumbers(
            writer, name, Enumerable.Range(0, _map.Y.Length).Select(j => Enumerable.Range(0, _map.X.Length).Select(i => _map.Points[i, j] is { } p ? of(p) : double.NaN)));
    }

    private void WriteCsv(Stream stream) => CsvTable.Write(
        stream,
        [SafeCell.Of(_x.Title), SafeCell.Of(_y.Title), "growth_1_per_s", "moves", "frequency_hz", "ring_margin", "simulated_grows"],
        Enumerable.Range(0, _map.Y.Length).SelectMany(j => Enumerable.Range(0, _map.X.Length).Select(i => Cells(i, j))));

    private string[] Cells(int i, int j)
    {
        StabilityPoint? p = _map.Points[i, j];
        bool isFound = p is not null && double.IsFinite(p.Growth);
        return
        [
            CsvTable.Number(_map.X[i]),
            CsvTable.Number(_map.Y[j]),
            CsvTable.Number(p?.Growth),
            isFound ? TurnWords.Of(p!.Part) : "",
            CsvTable.Number(isFound ? p!.Frequency : null),
            CsvTable.Number(p?.RingMargin),
            p?.Simulated is bool grows ? (grows ? "1" : "0") : "",
        ];
    }
}
