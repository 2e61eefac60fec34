using System.CommandLine.Parsing;

namespace PushSim.Cli;

/// <summary>What is wrong with a command line, one line each.</summary>
internal static class CommandLineErrors
{
    /// <summary>The mistakes of a command line; a word that nothing takes is told with the nearest that something would.</summary>
    public static IEnumerable<string> Of(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;

        // where a word is wrong the parser misses others for it, and says so of the command as a whole
        IEnumerable<ParseError> errors = parsed.UnmatchedTokens.Count > 0 ? parsed.Errors.Where(e => e.SymbolResult is OptionResult or ArgumentResult) : parsed.Errors;
        return [.. Wrong(command, parsed.UnmatchedTokens).Select(w => Unmatched(command, w)), .. errors.Select(e => OneLine(e.Message))];
    }

    // words behind a wrong command or option belong to it
    private static IEnumerable<string> Wrong(Command command, IReadOnlyList<string> words)
    {
        IEnumerable<string> options = words.Where(w => w.StartsWith('-'));
        return command.Subcommands.Count > 0 ? words.Take(1) : options.Any() ? options : words;
    }

    private static string Unmatched(Command command, string word)
    {
        if (!word.StartsWith('-') && command.Subcommands.Count == 0)
        {
            return $"\"{word}\" is one too many for {command.Name}";
        }

        (string kind, IEnumerable<string> known) = word.StartsWith('-') ? ("option", command.Options.Select(o => o.Name)) : ("command", command.Subcommands.Select(c => c.Name));
        string near = NearestWord.Find(word, known) is string found ? $"; did you mean {found}?" : "";
        return command.Subcommands.Count == 0 ? $"{command.Name} has no {kind} \"{word}\"{near}" : $"there is no {kind} \"{word}\"{near}";
    }

    private static string OneLine(string message) => string.Join(' ', message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
