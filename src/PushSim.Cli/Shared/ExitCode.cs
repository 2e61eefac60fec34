namespace PushSim.Cli.Shared;

/// <summary>Exit codes of every command.</summary>
public static class ExitCode
{
    /// <summary>Done [1].</summary>
    public const int Done = 0;

    /// <summary>The run could not finish [1].</summary>
    public const int RunFailed = 1;

    /// <summary>Wrong command line [1].</summary>
    public const int WrongCommandLine = 2;

    /// <summary>Wrong input file [1].</summary>
    public const int WrongInput = 3;

    /// <summary>Cannot read or write [1].</summary>
    public const int CannotReadOrWrite = 4;

    /// <summary>Interrupted [1].</summary>
    public const int Interrupted = 130;
}
