using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace PushSim.Cli;

/// <summary>Help that fits a terminal of 80 columns; a list of commands shows only the first paragraph of each.</summary>
internal sealed class ShortHelp(HelpAction full) : SynchronousCommandLineAction
{
    private const int Width = 80;

    /// <summary>Asking for help is right even where a needed argument is missing.</summary>
    public override bool ClearsParseErrors => true;

    /// <summary>The help option with this action.</summary>
    public static HelpOption Option()
    {
        var option = new HelpOption { Description = "Show help." };
        option.Action = new ShortHelp((HelpAction)option.Action!);
        return option;
    }

    public override int Invoke(ParseResult parseResult)
    {
        // the tree is made anew for each command line, so cutting it harms nobody
        foreach (Command command in parseResult.CommandResult.Command.Subcommands)
        {
            command.Description = (command.Description ?? "").Split("\n\n")[0].Replace('\n', ' ');
        }

        full.MaxWidth = Width;
        return full.Invoke(parseResult);
    }
}
