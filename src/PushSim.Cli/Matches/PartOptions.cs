using System.CommandLine.Parsing;

namespace PushSim.Cli.Matches;

/// <summary>`--part` and `--merge` of every command with drawn matches: one rule for all.</summary>
internal sealed class PartOptions
{
    public Option<(int K, int N)?> Part { get; } = new("--part")
    {
        Description = "Run only this part of the matches, for example 3/16; --merge joins the parts.",
        HelpName = "K/N",
        CustomParser = found =>
        {
            string text = found.Tokens.Count == 1 ? found.Tokens[0].Value : "";
            string[] both = text.Split('/');
            if (both.Length == 2 && int.TryParse(both[0], NumberStyles.None, CultureInfo.InvariantCulture, out int k) && int.TryParse(both[1], NumberStyles.None, CultureInfo.InvariantCulture, out int n) && k >= 1 && k <= n)
            {
                return (k, n);
            }

            found.AddError($"--part takes K/N with K from 1 to N, for example 3/16, not \"{text}\"");
            return null;
        },
    };

    public Option<bool> Merge { get; } = new("--merge") { Description = "Join the finished parts in the output folder." };

    public Option<bool> Check { get; } = new("--check") { Description = "With --merge: only tell of each part whether it is whole; plays and joins nothing." };

    /// <param name="command">The command.</param>
    /// <param name="common">Its other options.</param>
    /// <param name="matches">How many matches are split; null where none are.</param>
    public void AddTo(Command command, CommonOptions common, Func<SymbolResult, long?> matches)
    {
        command.Options.Add(Part);
        command.Options.Add(Merge);
        command.Options.Add(Check);
        command.Validators.Add(found =>
        {
            bool isPart = found.GetResult(Part) is not null;
            (int K, int N)? part = Given(() => found.GetValue(Part));
            long? most = isPart ? Given(() => matches(found)) : null;
            string? wrong = most > 0 && part is (int, int n) && n > most ? string.Create(CultureInfo.InvariantCulture, $"--part splits {most} matches into {n} parts, some of them empty: give K/N with N up to {most}")
                : isPart && found.GetValue(Merge) ? "--part runs one part, --merge joins them: give one of the two"
                : found.GetValue(Check) && !found.GetValue(Merge) ? "--check looks at the parts that --merge joins: give both"
                : isPart && found.GetValue(common.Report) ? "--report shows all matches together: give it with --merge"
                : isPart && found.GetValue(common.Json) ? "--part prints no JSON: --merge does, for all parts together"
                : found.GetValue(Merge) && found.GetValue(common.Json) && found.GetResult(common.Out) is null ? "with --json the folder of the parts must be named: add --out DIR"
                : null;
            if (wrong is not null)
            {
                found.AddError(wrong);
            }
        });
    }

    // a value that cannot be read is complained about where it is read
    private static T? Given<T>(Func<T?> value)
        where T : struct
    {
        try
        {
            return value();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
