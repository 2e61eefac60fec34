using PushSim.Analysis.Plan;
using PushSim.Cli.Fit;
using PushSim.Scenarios.Logs;
using PushSim.Words.Plans;

namespace PushSim.Cli.Plan;

/// <summary>`pushsim plan TYRE TYRE...`: a plan of pull tests worth running.</summary>
internal static class PlanCommand
{
    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var tyres = new Argument<string[]>("TYRE") { Description = "Names of the tyres, two or more.", Arity = ArgumentArity.OneOrMore };
        var difference = new Option<string>("--difference") { Description = "Difference that matters, e.g. 5%.", HelpName = "PERCENT", DefaultValueFactory = _ => "5%" };
        var spread = new Option<string?>("--spread") { Description = "Scatter from pull to pull, e.g. 3%.", HelpName = "PERCENT" };
        var from = new Option<string?>("--from") { Description = "Take the scatter from this log or table.", HelpName = "CSV" };
        var load = new Option<string?>("--load") { Description = "Load on the tested tyres, e.g. \"1360 gf\".", HelpName = "FORCE" };
        var power = new Option<string>("--power") { Description = "Share of tests that find the difference.", HelpName = "PERCENT", DefaultValueFactory = _ => "80%" };
        Option<long> seed = CommonOptions.Whole("--seed", "NUMBER", "Another order of the pulls.", 1, 0, int.MaxValue);
        var common = new CommonOptions("Folder for the table to fill in.");
        var command = new Command(
            "plan",
            "Plans pull tests: how many pulls, in which order, with a table to fill in.\n\n"
            + "Examples:\n  pushsim plan soft neoprene tape --difference 5% --load \"13.3 N\"\n  pushsim plan soft neoprene --from scenarios/logs/readings.csv\n"
            + "  pushsim fit pushsim-out/plan/plan.csv")
        {
            tyres, difference, spread, from, load, power, seed, common.Out, common.Force, common.Json, common.Quiet, common.Details,
        };
        tyres.Validators.Add(found =>
        {
            string[] names = [.. found.Tokens.Select(t => t.Value)];
            string wrong = names.Select(PlanSheet.Complaint).FirstOrDefault(c => c.Length > 0)
                ?? (names.Length < 2 ? "name two tyres or more" : names.Length > 40 ? "no more than 40 tyres in one plan" : names.Distinct().Count() < names.Length ? "two tyres have the same name" : "");
            if (wrong.Length > 0)
            {
                found.AddError(wrong);
            }
        });
        CheckShare(difference, 0.001, 1.0);
        CheckShare(spread, 0.0001, 1.0);
        CheckShare(power, 0.1, 0.99);
        CommonOptions.CheckText(load, FitOptions.LoadComplaint);
        CommonOptions.CheckFolder(common.Out);
        command.SetAction(p =>
        {
            string? text = p.GetValue(load);
            double? newton = text is not null && FitArguments.TryForce(text, out double f, out _) ? f : null;
            var request = new PlanRequest(p.GetValue(tyres)!, ShareText.Read(p.GetValue(difference))!.Value, ShareText.Read(p.GetValue(spread)), p.GetValue(from), text, newton, ShareText.Read(p.GetValue(power))!.Value, (int)p.GetValue(seed));
            return Run(request, common.Of(p), output, error, cancel);
        });
        return command;
    }

    private static int Run(PlanRequest request, OutputRequest options, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var ask = new OutputAsk("plan", "plan", [], error, cancel);
        options.Expect(ask);
        double? measured = null;
        double pilot = double.PositiveInfinity;
        if (request.From is not null)
        {
            // the load cancels in a share, so any will do
            FitResult earlier = FitRun.Do(new FitRequest { Files = [request.From], Load = request.LoadNewton ?? 1.0, Log = new LogOptions() }, cancel);
            if (ProblemWriter.Tell(error, earlier.Problems, earlier.CannotRead) is int wrong)
            {
                return wrong;
            }

            measured = earlier.Comparison?.RelativeSpread is double s && s > 0.0 ? s : null;
            pilot = earlier.Comparison?.SpreadFreedom ?? pilot;
            if (measured is null)
            {
                error.WriteLine($"pushsim: error: {PlainText.Of(request.From)} shows no scatter: it needs three pulls of some tyre that are not all equal; or give --spread");
                return ExitCode.WrongInput;
            }
        }

        double spread = request.Spread ?? measured ?? PullPlan.UsualSpread;
        SpreadSource source = request.Spread is not null ? SpreadSource.Given : measured is not null ? SpreadSource.Measured : SpreadSource.Assumed;
        PullPlan plan = PullPlan.Of(request.Tyres, request.Difference, spread, request.Power, request.Seed, source == SpreadSource.Measured ? pilot : double.PositiveInfinity);
        using OutputFolder? folder = options.Open(ask);
        string? file = folder?.WriteForm("plan.csv", PlanSheet.Csv(plan, request.LoadNewton));
        folder?.Put([]);
        options.Print(output, () => PlanJson.Of(plan, source), PlanWords.Verdict(plan), () => PlanText.Write(output, plan, source, request.LoadNewton is not null, file!, options.Details));
        return ExitCode.Done;
    }

    private static void CheckShare<T>(Option<T> option, double low, double high) => CommonOptions.CheckText(option, text =>
        ShareText.Read(text) is double v && v >= low && v <= high ? "" : FormattableString.Invariant($"needs a share from {100.0 * low:0.##}% to {100.0 * high:0.##}%, for example 5%"));
}
