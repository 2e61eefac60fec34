using System.CommandLine.Help;
using System.CommandLine.Invocation;
using PushSim.Cli.Completion;

namespace PushSim.Cli;

/// <summary>Help that fits a terminal of 80 columns, made from the same tree as completion and the man page: options under heads, examples never wrapped, of the program itself a list of its commands.</summary>
internal sealed class ShortHelp : SynchronousCommandLineAction
{
    // Most columns of a name with its value, before its sentence [1].
    private const int MostOfName = 22;

    /// <summary>Asking for help is right even where a needed argument is missing.</summary>
    public override bool ClearsParseErrors => true;

    /// <summary>The help option with this action.</summary>
    public static HelpOption Option() => new() { Description = "Show help.", Action = new ShortHelp() };

    public override int Invoke(ParseResult parseResult)
    {
        Command command = parseResult.CommandResult.Command;
        TextWriter output = parseResult.InvocationConfiguration.Output;
        if (command.Parents.Any())
        {
            Write(output, CommandShape.One(command, parseResult.RootCommandResult.Command.Options.OfType<HelpOption>().Single()), []);
        }
        else
        {
            Write(output, CommandShape.Root(command), CommandShape.Of(command));
        }

        return ExitCode.Done;
    }

    private static void Write(TextWriter output, CommandShape c, IReadOnlyList<CommandShape> commands)
    {
        foreach (string paragraph in new[] { c.About }.Concat(c.Text.Split("\n\n", StringSplitOptions.RemoveEmptyEntries)))
        {
            WrappedText.Write(output, "", "", paragraph.Replace('\n', ' '));
            output.WriteLine();
        }

        output.WriteLine("Usage: " + (commands.Count > 0 ? "pushsim COMMAND [options]" : c.Usage));
        if (c.Arguments.Count > 0)
        {
            output.WriteLine();
            Rows(output, [.. c.Arguments.Select(a => (a.Usage.Trim('[', ']'), a.About))]);
        }

        if (commands.Count > 0)
        {
            output.WriteLine();
            output.WriteLine("Commands:");
            Rows(output, [.. commands.Select(o => (o.Name, o.About))]);
        }

        foreach ((string head, IReadOnlyList<OptionShape> options) in c.Groups)
        {
            output.WriteLine();
            output.WriteLine(head + ":");
            Rows(output, [.. options.Select(o => (o.Usage, o.Whole))]);
        }

        if (c.Examples.Length > 0)
        {
            output.WriteLine();
            output.WriteLine("Examples:");
            output.WriteLine(c.Examples);
        }
    }

    // a name that is longer stands on a line of its own
    private static void Rows(TextWriter output, IReadOnlyList<(string Name, string About)> rows)
    {
        int width = rows.Select(r => r.Name.Length).Where(n => n <= MostOfName).DefaultIfEmpty(MostOfName).Max();
        string next = new(' ', width + 4);
        foreach ((string name, string about) in rows)
        {
            if (name.Length > width)
            {
                output.WriteLine("  " + name);
            }

            WrappedText.Write(output, name.Length > width ? next : "  " + name.PadRight(width + 2), next, about);
        }
    }
}
