using System.CommandLine.Completions;
using System.CommandLine.Help;
using PushSim.Cli.New;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Shelf;

namespace PushSim.Cli.Completion;

/// <summary>A command of the tree as help, completion and the man page see it.</summary>
/// <param name="Name">Its word.</param>
/// <param name="About">First paragraph of its help.</param>
/// <param name="Text">The paragraphs after it, examples left out.</param>
/// <param name="Examples">Its examples, one or more lines.</param>
/// <param name="Options">Its options, those of one head together, help last.</param>
/// <param name="Arguments">Its arguments.</param>
/// <param name="Words">Values its first argument can have; empty if it is a file, or none.</param>
/// <param name="TakesFiles">Whether its first argument is a file.</param>
internal sealed record CommandShape(
    string Name, string About, string Text, string Examples, IReadOnlyList<OptionShape> Options, IReadOnlyList<ArgumentShape> Arguments, IReadOnlyList<string> Words, bool TakesFiles)
{
    /// <summary>What its arguments are called; empty for none.</summary>
    public string Argument => string.Join(' ', Arguments.Select(a => a.Usage));

    /// <summary>A call of it: arguments, and options that are needed.</summary>
    public string Usage => string.Join(' ', new[] { "pushsim", Name, Argument }.Concat(Options.Where(o => o.IsNeeded).Select(o => o.Usage)).Append("[options]").Where(w => w.Length > 0));

    /// <summary>Its options by head, in the order of the heads.</summary>
    public IEnumerable<(string Head, IReadOnlyList<OptionShape> Options)> Groups =>
        OptionGroup.Heads.Select(h => (h, (IReadOnlyList<OptionShape>)[.. Options.Where(o => o.Group == h)])).Where(g => g.Item2.Count > 0);


    /// <summary>The commands below the root, in the order of its help.</summary>
    public static IReadOnlyList<CommandShape> Of(Command root) => [.. root.Subcommands.Select(c => One(c, root.Options.OfType<HelpOption>().Single()))];

    /// <summary>Options of the root itself, as the plain command sees them.</summary>
    public static CommandShape Root(Command root) => One(root, null);

    /// <summary>One command.</summary>
    /// <param name="c">The command.</param>
    /// <param name="help">The option that shows its help; null where it is its own.</param>
    public static CommandShape One(Command c, Option? help)
    {
        string[] parts = (c.Description ?? "").Split("Examples:\n");
        string[] paragraphs = [.. parts[0].Split("\n\n", StringSplitOptions.RemoveEmptyEntries).Select(p => p.Trim())];
        Argument? argument = c.Arguments.FirstOrDefault();
        bool isFile = argument?.Name is "FILE" or "CSV" or "LOG" or "ROBOT";
        return new CommandShape(
            c.Name,
            paragraphs[0].Replace('\n', ' '),
            string.Join("\n\n", paragraphs.Skip(1)),
            parts.Length > 1 ? parts[1] : "",
            [.. c.Options.Where(o => !o.Hidden).Append(help).OfType<Option>().Select(o => Shape(c.Name, o)).GroupBy(o => o.Group).OrderBy(g => Array.IndexOf([.. OptionGroup.Heads], g.Key)).SelectMany(g => g)],
            [.. c.Arguments.Select(a => new ArgumentShape(UsageOf(a), a.Description ?? ""))],
            argument is null || isFile ? [] : KnownWords(c.Name, argument.Name) ?? Labels(argument.GetCompletions(CompletionContext.Empty)),
            isFile);
    }

    private static OptionShape Shape(string command, Option o)
    {
        bool isFlag = o.ValueType == typeof(bool) || o is HelpOption or VersionOption;
        return new OptionShape(
            o.Name, (o.Description ?? "").Replace('\n', ' '), isFlag ? null : o.HelpName ?? "VALUE", isFlag ? [] : KnownWords(command, o.Name) ?? Labels(o.GetCompletions(CompletionContext.Empty)), o.Required, Default(o));
    }

    // Not told to the tree itself, whose help would then list every word.
    private static IReadOnlyList<string>? KnownWords(string command, string name) => (command, name) switch
    {
        ("new", "--kind") => StarterFiles.Kinds,
        ("new", "--wheels") => ["2", "4", "6", "8"],
        ("new", "--motor") => [.. PartShelf.Motors.Parts.Select(p => p.Name)],
        ("new", "--tyre") => [.. PartShelf.Tyres.Parts.SelectMany(p => p.Names)],
        ("shelf", "NAME") => [.. PartShelf.All.Select(s => s.File), .. PartShelf.All.SelectMany(s => s.Parts).SelectMany(p => p.Names)],
        ("explain", "KEY") => [.. KeyTable.All.Select(k => k.Name).Distinct()],
        _ => null,
    };

    // a number that the sentence does not name
    private static string Default(Option o) => o is { HasDefaultValue: true } and not HelpOption && o.ValueType == typeof(long) && !(o.Description ?? "").Contains("default", StringComparison.Ordinal)
        ? string.Create(CultureInfo.InvariantCulture, $"{o.GetDefaultValue()}")
        : "";

    private static string UsageOf(Argument a)
    {
        string many = a.Arity.MaximumNumberOfValues > 1 ? a.Name + "..." : a.Name;
        return a.Arity.MinimumNumberOfValues == 0 ? $"[{many}]" : many;
    }

    private static string[] Labels(IEnumerable<CompletionItem> items) => [.. items.Select(i => i.Label)];
}
