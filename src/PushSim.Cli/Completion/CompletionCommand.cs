namespace PushSim.Cli.Completion;

/// <summary>`pushsim completion SHELL`: a completion script, or the man page, made from the command tree.</summary>
internal static class CompletionCommand
{
    private static readonly string[] Shells = ["bash", "zsh", "fish", "powershell", "man"];

    public static Command Create(Command root, TextWriter output)
    {
        var shell = new Argument<string>("SHELL") { Description = "bash, zsh, fish, powershell, or man for the man page." };
        shell.AcceptOnlyFromAmong(Shells);
        var command = new Command(
            "completion",
            "Prints what completes commands in a shell, or the man page.\n\n"
            + "Examples:\n  pushsim completion bash > ~/.local/share/bash-completion/completions/pushsim\n  pushsim completion zsh > ~/.zfunc/_pushsim\n"
            + "  pushsim completion fish > ~/.config/fish/completions/pushsim.fish\n  pushsim completion powershell >> $PROFILE\n"
            + "  pushsim completion man > ~/.local/share/man/man1/pushsim.1")
        {
            shell,
        };
        command.SetAction(parsed =>
        {
            // always \n: a shell reads a return as part of the word
            output.Write(Script(parsed.GetValue(shell)!, root));
            return ExitCode.Done;
        });
        return command;
    }

    private static string Script(string shell, Command root)
    {
        CommandShape top = CommandShape.Root(root);
        IReadOnlyList<CommandShape> commands = CommandShape.Of(root);
        return shell switch
        {
            "bash" => ShellScripts.Bash(top, commands),
            "zsh" => ShellScripts.Zsh(top, commands),
            "fish" => ShellScripts.Fish(top, commands),
            "powershell" => ShellScripts.PowerShell(top, commands),
            _ => ManPage.Write(top, commands),
        };
    }
}
