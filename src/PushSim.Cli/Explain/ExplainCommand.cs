using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Explain;

/// <summary>`pushsim explain KEY`: a row of the table of keys, to read.</summary>
internal static class ExplainCommand
{
    public static Command Create(TextWriter output, TextWriter error)
    {
        var key = new Argument<string?>("KEY") { Description = "A key, a table or a word of an answer; none lists the tables.", Arity = ArgumentArity.ZeroOrOne };
        var json = new Option<bool>("--json") { Description = "Print one JSON document." };
        var quiet = new Option<bool>("--quiet") { Description = "Print one line for each key." };
        var details = new Option<bool>("--details") { Description = "List every key of every table." };
        var command = new Command(
            "explain",
            "Says what a key of a file, or a word of an answer, means.\n\n"
            + "Prints what it takes, its allowed and usual range, its default and an example.\n\n"
            + "Examples:\n  pushsim explain body_stiffness\n  pushsim explain chatter\n  pushsim explain tyre.body_stiffness\n  pushsim explain robot.motor.gear_ratio --json\n  pushsim explain tyre\n  pushsim explain")
        {
            key, json, quiet, details,
        };
        command.SetAction(parsed => Explain(parsed.GetValue(key), parsed.GetValue(json), parsed.GetValue(quiet), parsed.GetValue(details), output, error));
        return command;
    }

    private static int Explain(string? words, bool json, bool quiet, bool isDetailed, TextWriter output, TextWriter error)
    {
        IReadOnlyList<KeyMatch> matches = words is null ? KeySearch.All : KeySearch.Find(words);
        IReadOnlyList<(string Section, string Advice)> others = words is null ? [] : OtherNames.Find(words);
        (string Word, string Meaning)? term = words is null ? null : Glossary.Find(words);
        if (term is { } told && !json)
        {
            WrappedText.Write(output, told.Word + ": ", "  ", told.Meaning);
        }

        if (term is { } only && matches.Count == 0)
        {
            if (json)
            {
                output.WriteLine(CommandJson.Write(writer => ExplainJson.Write(writer, only.Meaning, matches, others)));
            }

            return ExitCode.Done;
        }

        if (matches.Count == 0)
        {
            IReadOnlyList<string> near = NearestWord.Find(words!, Glossary.All.Select(g => g.Word)) is string word ? [word, .. KeySearch.Nearest(words!)] : KeySearch.Nearest(words!);
            error.WriteLine($"pushsim: error: there is no key \"{PlainText.Of(words!)}\"");
            if (others.Count > 0)
            {
                error.WriteLine("advice: " + string.Join("; ", others.Select(o => $"in [{o.Section}]: {o.Advice}")));
                return ExitCode.WrongCommandLine;
            }

            error.WriteLine(near.Count > 0 ? $"advice: did you mean {string.Join(" or ", near)}?" : "advice: pushsim explain --details lists all keys");
            return ExitCode.WrongCommandLine;
        }

        string verdict = words is null ? $"{matches.Count} keys." : $"{matches.Count} {(matches.Count == 1 ? "key" : "keys")} of that name.";
        if (json)
        {
            output.WriteLine(CommandJson.Write(writer => ExplainJson.Write(writer, verdict, matches, others)));
        }
        else if (quiet)
        {
            foreach (KeyMatch match in matches)
            {
                output.WriteLine($"{match.Path}: {match.Key.Meaning}");
            }

            foreach ((string section, string advice) in others)
            {
                output.WriteLine($"not in [{section}]: {advice}");
            }
        }
        else if (words is null)
        {
            ExplainText.WriteList(output, isDetailed);
        }
        else
        {
            ExplainText.WriteBlocks(output, matches, isDetailed);
            foreach ((string section, string advice) in others)
            {
                output.WriteLine();
                WrappedText.Write(output, "", "  ", $"not in [{section}]: {advice}");
            }
        }

        return ExitCode.Done;
    }
}
