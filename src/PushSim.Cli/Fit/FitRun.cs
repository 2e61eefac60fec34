using PushSim.Analysis.Fit;
using PushSim.Words.Fits;

namespace PushSim.Cli.Fit;

/// <summary>A fit with its progress, and what it says of options.</summary>
internal static class FitRun
{
    /// <summary>All of a fit but what the tyres make of a robot.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <param name="progress">Where a simulated fit says how far it is; null: nowhere.</param>
    public static FitResult Do(FitRequest request, CancellationToken cancel, TextWriter? progress = null)
    {
        ProgressLine? line = null;
        try
        {
            return Told(request, progress is null ? LogFit.Of(request, null, cancel) : LogFit.Of(request, Step, cancel, Early));
        }
        finally
        {
            line?.End();
        }

        void Step(long done, long most)
        {
            line ??= new ProgressLine(progress!, "search steps at most", most, isQuiet: false);
            line.StepTo(done);
        }

        // the simulated test takes long: what the pulls tell by themselves comes first
        void Early(FitResult early)
        {
            WrappedText.Write(progress!, "from the pulls alone: ", "  ", PlainText.Of(FitText.Verdict(early)));
            progress!.Flush();
        }
    }

    /// <summary>What the command line lacks; empty if nothing.</summary>
    public static string Missing(FitRequest request, FitResult result) => result.Lack switch
    {
        FitLack.Load => "the load on the tested tyres is not known; add --load \"1360 gf\" (what a scale shows under them), or --robot FILE",
        FitLack.Scenario => "--simulate runs the test as it was done; add --robot with a scenario of it (robot, floor, tether, manoeuvre), for example scenarios/pull-test.toml",
        FitLack.Tether => $"--simulate needs a scenario with a tether and a manoeuvre of kind \"pull\" or \"drag\"; {request.RobotFile} has none",
        FitLack.DragScenario => "--drag and a scenario of kind \"pull\" contradict each other",
        FitLack.Drag => "the scenario is a drag: add --drag",
        FitLack.Traces => "--simulate needs logs over time: readings off a display show one force only",
        FitLack.LowTether => FormattableString.Invariant($"{result.LiftingForce:0.00} N at the height of the tether would lift the tested tyres off the floor; check --height, the mass in the robot file and the unit of the readings"),
        _ => "",
    };

    private static FitResult Told(FitRequest request, FitResult result)
    {
        IReadOnlyList<TyreFit> fits = result.IsHeightUnknown ? [.. result.Fits.Select(f => f with { Warnings = [.. f.Warnings, new PullWarning.NoHeight()] })] : result.Fits;
        int rows = result.ReadingsOfOtherLoad;
        string[] own = rows == 0 ? [] : [FormattableString.Invariant($"{rows} {(rows == 1 ? "row gives a load of its own" : "rows give loads of their own")}, which {(rows == 1 ? "was" : "were")} taken in place of --load {request.Load:0.###} N")];
        IEnumerable<string> notes = [.. result.Notes, .. own, .. fits.SelectMany(f => PullWords.Notes(f).Select(n => fits.Count > 1 ? $"{f.Name}: {n}" : n))];
        return result with { Fits = fits, Notes = [.. notes.Distinct()] };
    }
}
