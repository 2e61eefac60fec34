using System.CommandLine.Parsing;

namespace PushSim.Cli;

/// <summary>What is wrong with a command line, one line each.</summary>
internal static class CommandLineErrors
{
    /// <summary>The mistakes of a command line; a word that nothing takes is told with the nearest that something would.</summary>
    public static IEnumerable<string> Of(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;

        // an argument takes whatever stands there, a mistyped option, too
        string[] taken = Taken(parsed);
        if (taken.Length > 0)
        {
            return [.. taken.Select(w => Unmatched(command, w)), .. parsed.Errors.Where(e => e.SymbolResult is OptionResult).Select(e => Told(command, e))];
        }

        // where a word is wrong the parser misses others for it, and says so of the command as a whole
        IEnumerable<ParseError> errors = parsed.UnmatchedTokens.Count > 0 ? parsed.Errors.Where(e => e.SymbolResult is OptionResult or ArgumentResult) : parsed.Errors;
        return [.. Wrong(command, parsed.UnmatchedTokens).Select(w => Unmatched(command, w)), .. errors.Select(e => Told(command, e))];
    }

    /// <summary>Options that no command has and an argument took for its own.</summary>
    public static string[] Taken(ParseResult parsed) => parsed.Tokens.Any(t => t.Type == TokenType.DoubleDash) ? []
        : [.. parsed.CommandResult.Children.OfType<ArgumentResult>().SelectMany(a => a.Tokens).Select(t => t.Value).Where(v => v.Length > 2 && v.StartsWith("--", StringComparison.Ordinal))];

    // words behind a wrong command or option belong to it
    private static IEnumerable<string> Wrong(Command command, IReadOnlyList<string> words)
    {
        IEnumerable<string> options = words.Where(w => w.StartsWith('-'));
        return command.Subcommands.Count > 0 && command.Arguments.Count == 0 ? words.Take(1) : options.Any() ? options : words;
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

    // what the parser itself finds, in words of our own; what a command refuses has its words already
    private static string Told(Command command, ParseError error)
    {
        bool isOurs = error.SymbolResult is OptionResult { Option: var own } && error.Message.StartsWith(own.Name, StringComparison.Ordinal);
        return error.SymbolResult switch
        {
            OptionResult { Tokens.Count: 0, Option: var option } when !isOurs => $"{option.Name} needs {option.HelpName ?? "a value"}",
            OptionResult { Option: { Arity.MaximumNumberOfValues: 1 } option, IdentifierTokenCount: > 1 } when !isOurs => $"{option.Name} is given more than once",
            OptionResult { Option: var option } result when !isOurs && option.GetCompletions(System.CommandLine.Completions.CompletionContext.Empty).Select(c => c.Label).ToArray() is { Length: > 0 } words =>
                $"{option.Name} takes {string.Join(", ", words)}, not \"{result.Tokens[^1].Value}\"{(NearestWord.Find(result.Tokens[^1].Value, words) is string near ? $"; did you mean {near}?" : "")}",
            ArgumentResult { Tokens: [var token, ..], Argument: var choice } when choice.GetCompletions(System.CommandLine.Completions.CompletionContext.Empty).Select(c => c.Label).ToArray() is { Length: > 0 } words && !words.Contains(token.Value) =>
                $"{command.Name} takes {string.Join(", ", words)}, not \"{token.Value}\"{(NearestWord.Find(token.Value, words) is string near ? $"; did you mean {near}?" : "")}",
            ArgumentResult { Tokens.Count: 0, Argument: var argument } => $"{command.Name} needs {argument.Name}",
            CommandResult when command.Arguments.FirstOrDefault(a => a.Arity.MinimumNumberOfValues > 0) is { } needed && error.Message.Contains("Required argument", StringComparison.Ordinal) => $"{command.Name} needs {needed.Name}",
            _ => OneLine(error.Message),
        };
    }

    private static string OneLine(string message) => string.Join(' ', message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
