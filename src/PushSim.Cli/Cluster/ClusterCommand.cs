namespace PushSim.Cli.Cluster;

/// <summary>`pushsim cluster -- COMMAND`: scripts that play a campaign in parts on many machines, and how far the parts are.</summary>
internal static class ClusterCommand
{
    private const int MostParts = 100_000;

    private static readonly string[] s_campaigns = ["odds", "ladder", "sweep"];
    private static readonly string[] s_ours = ["--part", "--merge", "--check", "--json", "--report", "--quiet", "--within", "--match"];

    /// <param name="invoke">Runs another command line.</param>
    /// <param name="output">Standard output.</param>
    /// <param name="error">Standard error.</param>
    public static Command Create(Func<string[], TextWriter, TextWriter, int> invoke, TextWriter output, TextWriter error)
    {
        var campaign = new Argument<string[]>("COMMAND") { Description = "After --: odds, ladder or sweep --odds as you would run it on one machine, with --out.", Arity = ArgumentArity.OneOrMore };
        Option<long> parts = CommonOptions.Whole("--parts", "N", "Parts to split the matches into.", 16, 1, MostParts);
        var script = new Option<string?>("--script") { Description = "Print this script alone: array, parallel, container or merge.", HelpName = "NAME" };
        var json = new Option<bool>("--json") { Description = "Print one JSON document." };
        var details = new Option<bool>("--details") { Description = "Print all scripts and the state of all parts." };
        script.AcceptOnlyFromAmong([.. ClusterScripts.Names]);
        var command = new Command(
            "cluster",
            "How do I run it on many machines: ready job scripts and the state of the parts.\n\n"
            + "Examples:\n  pushsim cluster -- odds mine.toml --matches 100000 --out big\n  pushsim cluster --script array -- odds mine.toml --out big > big.sh\n"
            + "  pushsim cluster --parts 64 --json -- ladder a.toml b.toml --out league")
        {
            campaign, parts, script, json, details,
        };
        command.SetAction(parsed =>
        {
            string[] words = parsed.GetValue(campaign)!;
            string wrong = Array.IndexOf(s_campaigns, words[0]) < 0 ? $"\"{words[0]}\" has no parts; after -- comes odds, ladder or sweep --odds"
                : Array.Find(words, w => s_ours.Contains(w.Split('=')[0])) is string ours ? $"the scripts give {ours.Split('=')[0]} themselves or cannot use it; leave it out"
                : !words.Any(w => w.Split('=')[0] == "--out") ? "all jobs share a folder: add --out DIR"
                : "";
            if (wrong.Length > 0)
            {
                return Complaint.OfCommandLine(error, PlainText.Of(wrong), "cluster");
            }

            // the campaign's own command line tells what is wrong with it, and how far the parts are
            using var state = new StringWriter(CultureInfo.InvariantCulture);
            int code = invoke([.. words, "--merge", "--check", "--json"], state, error);
            if (code is not (ExitCode.Done or ExitCode.RunFailed))
            {
                return code;
            }

            var scripts = new ClusterScripts(words, (int)parsed.GetValue(parts));
            using JsonDocument found = JsonDocument.Parse(state.ToString());
            if (parsed.GetValue(json))
            {
                output.WriteLine(ClusterAnswer.Json(found.RootElement, scripts));
            }
            else if (parsed.GetValue(script) is string name)
            {
                output.Write(scripts[name]);
            }
            else
            {
                ClusterAnswer.Write(output, found.RootElement, scripts, parsed.GetValue(details));
            }

            return ExitCode.Done;
        });
        return command;
    }
}
