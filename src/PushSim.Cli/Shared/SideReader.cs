namespace PushSim.Cli.Shared;

/// <summary>Reads what a file is compared with: its variants, and the file of --beside.</summary>
internal static class SideReader
{
    /// <summary>The option.</summary>
    public static Option<string?> Option() => new("--beside") { Description = "Scenario to compare with, or a robot file: the same with that robot.", HelpName = "FILE" };

    /// <summary>The designs but the first, read; null after complaints.</summary>
    /// <param name="sides">All designs, the first among them.</param>
    /// <param name="reader">Reads one.</param>
    /// <param name="told">What was complained about of the first.</param>
    /// <param name="error">Receives complaints.</param>
    /// <param name="code">Exit code of what stands in the way.</param>
    public static IReadOnlyList<ReadResult>? Others(IReadOnlyList<DesignSide> sides, Func<string, ReadOptions, ReadResult> reader, ReadResult told, TextWriter error, out int code)
    {
        List<ReadResult> reads = [];
        foreach (DesignSide side in sides.Skip(1))
        {
            ReadResult read = reader(side.File, side.Options);

            // what is wrong with a variant was told of the file
            int? wrong = side.Options.Variant is not null ? null : ProblemWriter.Tell(error, [.. read.Problems.Except(told.Problems)], read.CannotRead);
            if (wrong is not null || (read.Scenario is null && read.Robot is null))
            {
                code = wrong ?? ExitCode.WrongInput;
                return null;
            }

            reads.Add(read);
        }

        code = ExitCode.Done;
        return reads;
    }
}
