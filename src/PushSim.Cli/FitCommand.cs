using System.CommandLine;
using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Plotting;
using PushSim.Scenarios;
using PushSim.Scenarios.Logs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Cli;

/// <summary>`pushsim fit CSV...`: from pull tests to friction.</summary>
internal static class FitCommand
{
    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var files = new Argument<string[]>("CSV") { Description = "Logs of a load cell, or tables of readings.", Arity = ArgumentArity.OneOrMore };
        var load = new Option<string?>("--load") { Description = "Load on the tested tyres, e.g. \"420 gf\".", HelpName = "FORCE" };
        var robot = new Option<string?>("--robot") { Description = "Robot file, or scenario with a tether: load, motors.", HelpName = "FILE" };
        var height = new Option<string?>("--height") { Description = "Height of the tether above the floor.", HelpName = "LENGTH" };
        var drag = new Option<bool>("--drag") { Description = "The robot was dragged with its wheels locked." };
        var tyre = new Option<string?>("--tyre") { Description = "All files are of this tyre.", HelpName = "NAME" };
        var unit = new Option<string?>("--unit") { Description = "Unit of force: N, gf, kgf, lbf, ozf, mV.", HelpName = "UNIT" };
        var timeUnit = new Option<string?>("--time-unit") { Description = "Unit of time: s, ms, us, min.", HelpName = "UNIT" };
        var calibration = new Option<string?>("--calibration") { Description = "Of a cell in mV, e.g. \"25 gf/mV\".", HelpName = "FORCE/mV" };
        var tare = new Option<string?>("--tare") { Description = "Reading of the slack chain, if not in the log.", HelpName = "FORCE" };
        var flip = new Option<bool>("--flip") { Description = "The cell's sign is reversed." };
        var difference = new Option<string?>("--difference") { Description = "Friction difference that matters, e.g. 0.05.", HelpName = "NUMBER" };
        var simulate = new Option<bool>("--simulate") { Description = "Fit the scenario of --robot, run in the engine, to the logs: slip speed and stiffness too." };
        MeaningOptions meaning = new();
        var outDir = new Option<string?>("--out") { Description = "Folder for plots and the tyre block.", HelpName = "DIR" };
        var force = new Option<bool>("--force") { Description = "Write into a folder that is not an output of pushsim." };
        var json = new Option<bool>("--json") { Description = "Print one JSON document; files only with --out." };
        var quiet = new Option<bool>("--quiet") { Description = "Print the verdict only." };
        var noPlots = new Option<bool>("--no-plots") { Description = "Write no pictures." };
        Option<bool> report = ReportOption.Create();
        var command = new Command(
            "fit",
            "Finds the friction of a tyre from pull tests: is it the tyre or the motor?\n\n"
            + "Examples:\n  pushsim fit scenarios/logs/soft-tyre.csv --load \"1360 gf\"\n"
            + "  pushsim fit scenarios/logs/mole-pulls.csv --robot scenarios/pull-test.toml --simulate\n  pushsim fit scenarios/logs/readings.csv --load \"200 gf\"\n"
            + "  pushsim fit scenarios/logs/readings.csv --load \"200 gf\" --robot scenarios/robots/mole.toml --against scenarios/robots/badger.toml --stronger-motor 1.5")
        {
            files, load, robot, height, drag, tyre, unit, timeUnit, calibration, tare, flip, difference, simulate, outDir, force, json, quiet, noPlots, report,
        };
        meaning.AddTo(command, robot);
        ReportOption.Check(command, report, json, outDir);
        CommonOptions.CheckFolder(outDir);
        Check(load, t => FitArguments.TryForce(t, out double f, out string m) && f > 0.0 ? "" : m.Length > 0 ? m : "must be above zero");
        Check(tare, t => FitArguments.TryForce(t, out _, out string m) ? "" : m);
        Check(height, t => FitArguments.TryLength(t, out double h, out string m) && h >= 0.0 ? "" : m.Length > 0 ? m : "cannot be below the floor");
        Check(calibration, t => FitArguments.TryCalibration(t, out _, out string m) ? "" : m);
        Check(unit, t => FitArguments.IsForceUnit(t) ? "" : $"\"{t}\" is no unit of force; use N, gf, kgf, lbf, ozf or mV");
        Check(timeUnit, t => FitArguments.IsTimeUnit(t) ? "" : $"\"{t}\" is no unit of time; use s, ms, us or min");
        Check(difference, t => TryDifference(t, out _) ? "" : "takes a friction above zero and below 10, for example 0.05");
        command.SetAction(p =>
        {
            var what = new FitRequest
            {
                Files = p.GetValue(files)!,
                Load = p.GetValue(load) is string l && FitArguments.TryForce(l, out double newton, out _) ? newton : null,
                RobotFile = p.GetValue(robot),
                Height = p.GetValue(height) is string h && FitArguments.TryLength(h, out double metre, out _) ? metre : null,
                IsDrag = p.GetValue(drag),
                Tyre = p.GetValue(tyre),
                Tare = p.GetValue(tare) is string t && FitArguments.TryForce(t, out double slack, out _) ? slack : null,
                Difference = p.GetValue(difference) is string d && TryDifference(d, out double matters) ? matters : null,
                Simulate = p.GetValue(simulate),
                Meaning = meaning.Of(p),
                Log = new LogOptions
                {
                    ForceUnit = p.GetValue(unit),
                    TimeUnit = p.GetValue(timeUnit),
                    ForcePerMillivolt = p.GetValue(calibration) is string c && FitArguments.TryCalibration(c, out double per, out _) ? per : null,
                    IsReversed = p.GetValue(flip),
                },
            };
            return Run(what, new Options(p.GetValue(outDir), p.GetValue(force), p.GetValue(json), p.GetValue(quiet), p.GetValue(noPlots), p.GetValue(report)), output, error, cancel);
        });
        return command;
    }

    private static bool TryDifference(string text, out double value) =>
        double.TryParse(text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out value) && value is > 0.0 and < 10.0;

    private static void Check(Option<string?> option, Func<string, string> complaint) => option.Validators.Add(found =>
    {
        if (found.GetValueOrDefault<string?>() is string text && complaint(text) is { Length: > 0 } message)
        {
            found.AddError($"{option.Name} {message}");
        }
    });

    private static int Run(FitRequest request, Options options, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        FitOutcome outcome = FitWork.Do(request, cancel);
        ProblemWriter.Write(error, outcome.Problems);
        if (outcome.CannotRead)
        {
            return ExitCode.CannotReadOrWrite;
        }

        if (outcome.Problems.Any(p => p.Severity == Severity.Error))
        {
            return ExitCode.WrongInput;
        }

        if (outcome.Missing.Length > 0)
        {
            error.WriteLine("pushsim: error: " + outcome.Missing);
            error.WriteLine("help: pushsim fit --help");
            return ExitCode.WrongCommandLine;
        }

        outcome = outcome with { Meaning = MeaningWork.Do(request, outcome, cancel) };
        if (MeaningOptions.Complain(outcome.Meaning, error) is int code)
        {
            return code;
        }

        bool hasFiles = !options.Json || options.Out is not null;
        OutputFolder? folder = hasFiles ? OutputFolder.Open(options.Out ?? Path.Combine("pushsim-out", "fit"), options.Force) : null;
        (TyreSettings? like, int wheels) = Like(outcome.Robot);
        string[] blocks = [.. outcome.Fits.Select((f, k) => TyreBlock.Of(f, like, wheels, outcome.Simulated.Count > 0 ? outcome.Simulated[k].Fit : null))];
        List<string> files = folder is null ? [] : WriteFiles(folder, outcome, blocks, options.NoPlots, cancel);
        if (folder is not null && options.Report)
        {
            cancel.ThrowIfCancellationRequested();
            files.Add(folder.Write(RunPage.FileName, FitPage.Of(request, outcome, blocks).Write));
        }

        if (options.Json)
        {
            output.WriteLine(FitReport.Json(outcome));
        }
        else if (options.Quiet)
        {
            output.WriteLine(PlainText.Of(FitReport.Verdict(outcome)));
        }
        else
        {
            FitReport.WriteText(output, outcome, blocks, files);
        }

        return ExitCode.Done;
    }

    // What the pasted table takes over: the tyre on the driven wheels, and how many wheels share the load.
    private static (TyreSettings? Tyre, int Wheels) Like(RobotSettings? robot)
    {
        if (robot is null)
        {
            return (null, 4);
        }

        int[] driven = [.. robot.Drives.Where(d => d.Motors.Count > 0).SelectMany(d => d.Wheels).Select(w => w.Wheel).DefaultIfEmpty(0)];
        return (robot.Wheels[driven[0]].Tyre, driven.Length);
    }

    private static List<string> WriteFiles(OutputFolder folder, FitOutcome outcome, string[] blocks, bool noPlots, CancellationToken cancel)
    {
        IReadOnlyList<TyreFit> fits = outcome.Fits;
        HashSet<string> names = new(StringComparer.Ordinal);
        List<string> files = [folder.Write("tyres.toml", s => s.Write(System.Text.Encoding.UTF8.GetBytes(string.Join('\n', blocks))))];
        if (outcome.Meaning is { Tyres.Count: > 0 } meaning)
        {
            files.Add(folder.Write("on-the-robot.csv", s => MeaningText.WriteCsv(s, meaning)));
        }

        if (outcome.Simulated.Count > 0)
        {
            files.Add(folder.Write("simulated.csv", s => SimulationText.WriteCsv(s, outcome.Simulated)));
        }

        if (noPlots)
        {
            return files;
        }

        foreach (TyreFit fit in fits)
        {
            cancel.ThrowIfCancellationRequested();
            if (FitPlot.OfTyre(fit) is PlotSheet plot)
            {
                string name = fits.Count == 1 ? "plot" : Unique("plot-" + Slug.Of(fit.Name));
                files.AddRange(folder.WritePicture(name, plot));
            }
        }

        if (fits.Count > 1 || !files.Any(f => f.EndsWith(".png", StringComparison.Ordinal)))
        {
            PlotSheet all = FitPlot.OfAll(fits);
            files.AddRange(folder.WritePicture("plot", all));
        }

        foreach ((string tyre, SimulationFit? simulated) in outcome.Simulated)
        {
            if (simulated is not null)
            {
                PlotSheet plot = SimulationPlot.Of(tyre, simulated);
                string name = fits.Count == 1 ? "simulated" : Unique("simulated-" + Slug.Of(tyre));
                files.AddRange(folder.WritePicture(name, plot));
            }
        }

        if (outcome.Meaning is MeaningResult m && MeaningPlot.Of(m.Tyres, m.Opponent, m.Request.Stronger) is PlotSheet shoves)
        {
            files.AddRange(folder.WritePicture("on-the-robot", shoves));
        }

        return files;

        // names that only signs or capitals tell apart get a number
        string Unique(string name)
        {
            string free = name;
            for (int n = 2; !names.Add(free); n++)
            {
                free = $"{name}-{n}";
            }

            return free;
        }
    }

    private sealed record Options(string? Out, bool Force, bool Json, bool Quiet, bool NoPlots, bool Report);
}
