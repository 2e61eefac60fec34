using System.CommandLine;
using System.CommandLine.Parsing;

namespace PushSim.Cli;

/// <summary>The command tree; output, errors and interrupts are injected.</summary>
public static class CommandLineApp
{
    private const string Description =
        "Simulates a small skid-steer robot from a text file: launch, braking, pull and drag tests, turning.";

    /// <summary>Runs one command line.</summary>
    /// <param name="args">Arguments without the program's name.</param>
    /// <param name="output">Standard output.</param>
    /// <param name="error">Standard error.</param>
    /// <param name="cancel">Interrupt.</param>
    /// <returns>One of <see cref="ExitCode"/> [1].</returns>
    public static int Invoke(string[] args, TextWriter output, TextWriter error, CancellationToken cancel = default)
    {
        var root = new RootCommand(Description) { RunCommand.Create(output, error, cancel), CheckCommand.Create(output, error) };
        ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0)
        {
            foreach (ParseError problem in parsed.Errors)
            {
                error.WriteLine("pushsim: error: " + problem.Message);
            }

            error.WriteLine("help: pushsim --help, or pushsim run --help");
            return ExitCode.WrongCommandLine;
        }

        var configuration = new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false };
        try
        {
            return parsed.Invoke(configuration);
        }
        catch (OperationCanceledException)
        {
            error.WriteLine("pushsim: interrupted");
            return ExitCode.Interrupted;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.WriteLine("pushsim: error: " + e.Message);
            return ExitCode.CannotReadOrWrite;
        }
    }
}
