namespace PushSim.Cli.Shared;

/// <summary>One line about what went wrong, and the exit code of it.</summary>
internal static class Complaint
{
    /// <summary>A wrong command line, with where to read on.</summary>
    public static int OfCommandLine(TextWriter error, string message, string command)
    {
        error.WriteLine("pushsim: error: " + PlainText.Of(message));
        error.WriteLine($"help: pushsim {command} --help");
        return ExitCode.WrongCommandLine;
    }

    public static int OfRun(TextWriter error, string message)
    {
        error.WriteLine("pushsim: error: " + PlainText.Of(message));
        return ExitCode.RunFailed;
    }
}
