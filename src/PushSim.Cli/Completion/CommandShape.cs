using System.CommandLine.Completions;
using System.CommandLine.Help;
using PushSim.Cli.New;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Shelf;

namespace PushSim.Cli.Completion;

/// <summary>A command of the tree as completion and the man page see it.</summary>
/// <param name="Name">Its word.</param>
/// <param name="About">First paragraph of its help.</param>
/// <param name="Text">The paragraphs after it, examples left out.</param>
/// <param name="Examples">Its examples, one or more lines.</param>
/// <param name="Options">Its options, help among them.</param>
/// <param name="Argument">What its argument is called, with brackets and dots; empty for none.</param>
/// <param name="ArgumentAbout">What that is.</param>
/// <param name="Words">Values its argument can have; empty if it is a file, or none.</param>
/// <param name="TakesFiles">Whether its argument is a file.</param>
internal sealed record CommandShape(
    string Name, string About, string Text, string Examples, IReadOnlyList<OptionShape> Options, string Argument, string ArgumentAbout, IReadOnlyList<string> Words, bool TakesFiles)
{
    /// <summary>The commands below the root, in the order of its help.</summary>
    public static IReadOnlyList<CommandShape> Of(Command root) => [.. root.Subcommands.Select(c => One(c, root.Options.OfType<HelpOption>().Single()))];

    /// <summary>Options of the root itself, as the plain command sees them.</summary>
    public static CommandShape Root(Command root) => One(root, null);

    private static CommandShape One(Command c, Option? help)
    {
        string[] parts = (c.Description ?? "").Split("Examples:\n");
        string[] paragraphs = [.. parts[0].Split("\n\n", StringSplitOptions.RemoveEmptyEntries).Select(p => p.Trim())];
        Argument? argument = c.Arguments.FirstOrDefault();
        bool isFile = argument?.Name is "FILE" or "CSV";
        return new CommandShape(
            c.Name,
            paragraphs[0].Replace('\n', ' '),
            string.Join("\n\n", paragraphs.Skip(1)),
            parts.Length > 1 ? parts[1] : "",
            [.. c.Options.Where(o => !o.Hidden).Append(help).OfType<Option>().Select(o => Shape(c.Name, o))],
            argument is null ? "" : Usage(argument),
            argument?.Description ?? "",
            argument is null || isFile ? [] : KnownWords(c.Name, argument.Name) ?? Labels(argument.GetCompletions(CompletionContext.Empty)),
            isFile);
    }

    private static OptionShape Shape(string command, Option o)
    {
        bool isFlag = o.ValueType == typeof(bool) || o is HelpOption or VersionOption;
        return new OptionShape(
            o.Name, (o.Description ?? "").Replace('\n', ' '), isFlag ? null : o.HelpName ?? "VALUE", isFlag ? [] : KnownWords(command, o.Name) ?? Labels(o.GetCompletions(CompletionContext.Empty)));
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

    private static string Usage(Argument a)
    {
        string many = a.Arity.MaximumNumberOfValues > 1 ? a.Name + "..." : a.Name;
        return a.Arity.MinimumNumberOfValues == 0 ? $"[{many}]" : many;
    }

    private static string[] Labels(IEnumerable<CompletionItem> items) => [.. items.Select(i => i.Label)];
}
