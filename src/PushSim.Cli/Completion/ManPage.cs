namespace PushSim.Cli.Completion;

/// <summary>The man page, made from the command tree.</summary>
internal static class ManPage
{
    private static readonly (int Code, string Meaning)[] Codes =
    [
        (ExitCode.Done, "done"), (ExitCode.WrongInput, "an input file is wrong"), (ExitCode.WrongCommandLine, "the command line is wrong"),
        (ExitCode.RunFailed, "a run failed"), (ExitCode.CannotReadOrWrite, "a file cannot be read or written"), (ExitCode.Interrupted, "interrupted"),
    ];

    public static string Write(CommandShape top, IReadOnlyList<CommandShape> commands)
    {
        var text = new StringBuilder(".TH PUSHSIM 1\n.SH NAME\npushsim \\- " + Plain(top.About.Split(':')[0].TrimEnd('.')) + "\n.SH SYNOPSIS\n.B pushsim\n.I COMMAND\n[options]\n.SH DESCRIPTION\n");
        text.Append(Lines(top.About)).Append(".SH COMMANDS\n");
        foreach (CommandShape c in commands)
        {
            text.Append($".SS pushsim {Plain(c.Name)} {Plain(c.Argument)} [options]\n").Append(Lines(c.About));
            foreach (string paragraph in c.Text.Split("\n\n", StringSplitOptions.RemoveEmptyEntries))
            {
                text.Append(".PP\n").Append(Lines(paragraph));
            }

            foreach (ArgumentShape a in c.Arguments)
            {
                text.Append($".TP\n.I {Plain(a.Usage)}\n").Append(Lines(a.About));
            }

            foreach ((string head, IReadOnlyList<OptionShape> options) in c.Groups)
            {
                text.Append(".PP\n").Append(Lines(head + ":"));
                foreach (OptionShape o in options)
                {
                    text.Append($".TP\n.B {Plain(o.Name)}{(o.Value is null ? "" : $" \\fI{Plain(o.Value)}\\fR")}\n").Append(Lines(o.Whole));
                }
            }

            text.Append(Examples(c));
        }

        text.Append(".SH OPTIONS\n");
        foreach (OptionShape o in top.Options)
        {
            text.Append($".TP\n.B {Plain(o.Name)}\n").Append(Lines(o.About));
        }

        text.Append(".SH EXIT STATUS\n");
        foreach ((int code, string meaning) in Codes)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $".TP\n.B {code}\n{meaning}\n");
        }

        return text.Append(".SH ENVIRONMENT\n.TP\n.B NO_COLOR\nno colour on the screen\n.SH EXAMPLES\n").Append(Examples(top)).ToString();
    }

    private static string Examples(CommandShape c) => c.Examples.Length == 0 ? "" : ".PP\n.nf\n" + Lines(c.Examples) + ".fi\n";

    private static string Lines(string text) => string.Concat(text.Split('\n').Select(l => Guarded(Plain(l)) + "\n"));

    // troff takes a dot or quote at the start of a line for a request
    private static string Guarded(string line) => line.StartsWith('.') || line.StartsWith('\'') ? "\\&" + line : line;

    private static string Plain(string text) => text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal);
}
