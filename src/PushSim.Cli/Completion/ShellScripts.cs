namespace PushSim.Cli.Completion;

/// <summary>Completion scripts of four shells. They hold every word themselves, so pressing tab never starts the program.</summary>
internal static class ShellScripts
{
    public static string Bash(CommandShape top, IReadOnlyList<CommandShape> commands)
    {
        var text = new StringBuilder("# bash completion of pushsim\n_pushsim_words() {\n    local IFS=$'\\n' word\n    COMPREPLY=()\n    while read -r word; do\n"
            + "        [[ $word == \"$cur\"* ]] && COMPREPLY+=(\"$(printf '%q' \"$word\")\")\n    done\n}\n\n"
            // old bash, as on a Mac, has neither mapfile nor compopt
            + "_pushsim_paths() {\n    local IFS=$'\\n'\n    COMPREPLY=($(compgen \"$1\" -- \"$cur\"))\n    compopt -o filenames 2>/dev/null\n}\n\n_pushsim() {\n"
            + "    local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]} command=${COMP_WORDS[1]}\n"
            + "    cur=${cur//[\\\\\\\"\\']/}\n    COMPREPLY=()\n"
            + "    if (( COMP_CWORD == 1 )); then\n");
        text.Append("        ").Append(BashWords(commands.Select(c => c.Name).Concat(top.Options.Select(o => o.Name)))).Append("\n        return\n    fi\n    case $command in\n");
        foreach (CommandShape c in commands)
        {
            text.Append($"    {c.Name})\n        case $prev in\n");
            foreach (OptionShape o in c.Options.Where(o => o.Value is not null))
            {
                string answer = o.IsFolder ? "_pushsim_paths -d"
                    : o.IsPath ? BashFiles : o.Words.Count > 0 ? BashWords(o.Words) : ":";
                text.Append($"        {o.Name}) {answer}; return ;;\n");
            }

            text.Append("        esac\n        if [[ $cur == -* ]]; then\n            ").Append(BashWords(c.Options.Select(o => o.Name))).Append("\n            return\n        fi\n");
            text.Append("        ").Append(c.TakesFiles ? BashFiles : c.Words.Count > 0 ? BashWords(c.Words) : ":").Append("\n        ;;\n");
        }

        return text.Append("    esac\n}\n\ncomplete -F _pushsim pushsim\n").ToString();
    }

    public static string Zsh(CommandShape top, IReadOnlyList<CommandShape> commands)
    {
        var text = new StringBuilder("#compdef pushsim\n\n_pushsim() {\n    local -a commands\n    commands=(\n");
        foreach (CommandShape c in commands)
        {
            text.Append($"        {Quoted($"{c.Name}:{c.About}")}\n");
        }

        text.Append("    )\n    if (( CURRENT == 2 )); then\n        _describe command commands\n        _arguments");
        foreach (OptionShape o in top.Options)
        {
            text.Append(' ').Append(Quoted($"{o.Name}[{ZshText(o.About)}]"));
        }

        text.Append("\n        return\n    fi\n    local command=$words[2]\n    shift words\n    (( CURRENT-- ))\n    case $command in\n");
        foreach (CommandShape c in commands)
        {
            text.Append($"    {c.Name})\n        _arguments");
            foreach (OptionShape o in c.Options)
            {
                string value = o.Value is null ? "" : $":{ZshText(o.Value)}:" + (o.IsFolder ? "_files -/" : o.IsPath ? "_files" : ZshWords(o.Words));
                text.Append(" \\\n            ").Append(Quoted($"{o.Name}[{ZshText(o.About)}]{value}"));
            }

            if (c.TakesFiles || c.Words.Count > 0)
            {
                text.Append(" \\\n            ").Append(Quoted($"*:{ZshText(c.Argument.Trim('[', ']', '.'))}:{(c.TakesFiles ? "_files" : ZshWords(c.Words))}"));
            }

            text.Append("\n        ;;\n");
        }

        // autoloaded it is called at once, sourced it is registered
        return text.Append("    esac\n}\n\nif [[ $funcstack[1] == _pushsim ]]; then\n    _pushsim \"$@\"\nelse\n    compdef _pushsim pushsim\nfi\n").ToString();
    }

    public static string Fish(CommandShape top, IReadOnlyList<CommandShape> commands)
    {
        var text = new StringBuilder("# fish completion of pushsim\ncomplete -c pushsim -f\n");
        foreach (OptionShape o in top.Options)
        {
            text.Append($"complete -c pushsim -n __fish_use_subcommand -l {o.Name[2..]} -d {FishQuoted(o.About)}\n");
        }

        foreach (CommandShape c in commands)
        {
            string inside = $"-n '__fish_seen_subcommand_from {c.Name}'";
            text.Append($"complete -c pushsim -n __fish_use_subcommand -a {c.Name} -d {FishQuoted(c.About)}\n");
            foreach (OptionShape o in c.Options)
            {
                string value = o.Value is null ? "" : o.IsFolder ? " -x -a '(__fish_complete_directories)'" : o.IsPath ? " -r -F" : o.Words.Count > 0 ? " -x -a " + FishWords(o.Words) : " -x";
                text.Append($"complete -c pushsim {inside} -l {o.Name[2..]}{value} -d {FishQuoted(o.About)}\n");
            }

            if (c.TakesFiles)
            {
                text.Append($"complete -c pushsim {inside} -F\n");
            }
            else if (c.Words.Count > 0)
            {
                text.Append($"complete -c pushsim {inside} -a {FishWords(c.Words)}\n");
            }
        }

        return text.ToString();
    }

    public static string PowerShell(CommandShape top, IReadOnlyList<CommandShape> commands)
    {
        var text = new StringBuilder("# PowerShell completion of pushsim\nRegister-ArgumentCompleter -Native -CommandName pushsim -ScriptBlock {\n    param($word, $ast, $place)\n"
            + "    $parts = @($ast.CommandElements | Where-Object { $_.Extent.EndOffset -lt $place -or $_.Extent.Text -ne $word } | ForEach-Object { $_.Extent.Text })\n"
            + "    $words = switch ($parts.Count) {\n        1 { @(");
        text.AppendJoin(", ", commands.Select(c => c.Name).Concat(top.Options.Select(o => o.Name)).Select(PowerQuoted)).Append(") }\n        default {\n            switch (\"$($parts[1]) $($parts[-1])\") {\n");
        foreach (CommandShape c in commands)
        {
            foreach (OptionShape o in c.Options.Where(o => o.Value is not null))
            {
                text.Append($"                {PowerQuoted($"{c.Name} {o.Name}")} {{ @({string.Join(", ", o.Words.Select(PowerQuoted))}); break }}\n");
            }
        }

        text.Append("                default {\n                    switch ($parts[1]) {\n");
        foreach (CommandShape c in commands)
        {
            text.Append($"                        {PowerQuoted(c.Name)} {{ @({string.Join(", ", c.Words.Concat(c.Options.Select(o => o.Name)).Select(PowerQuoted))}) }}\n");
        }

        // no answer at all lets PowerShell complete file names itself
        return text.Append("                    }\n                }\n            }\n        }\n    }\n"
            + "    $words | Where-Object { $_ -like \"$($word.Trim(\"'\", '\"'))*\" } | ForEach-Object {\n"
            + "        $quoted = if ($_ -match '[ ,]') { \"'$_'\" } else { $_ }\n"
            + "        [System.Management.Automation.CompletionResult]::new($quoted, $_, 'ParameterValue', $_)\n    }\n}\n").ToString();
    }

    private const string BashFiles = "_pushsim_paths -f";

    private static string BashWords(IEnumerable<string> words) => "_pushsim_words < <(printf '%s\\n' " + string.Join(' ', words.Select(Quoted)) + ")";

    private static string Quoted(string word) => "'" + word.Replace("'", "'\\''", StringComparison.Ordinal) + "'";

    private static string ZshText(string text) => text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("[", "\\[", StringComparison.Ordinal).Replace("]", "\\]", StringComparison.Ordinal).Replace(":", "\\:", StringComparison.Ordinal);

    private static string ZshWords(IReadOnlyList<string> words) => words.Count == 0 ? " " : "(" + string.Join(' ', words.Select(w => w.Replace(" ", "\\ ", StringComparison.Ordinal))) + ")";

    private static string FishQuoted(string text) => "'" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal) + "'";

    // the list is expanded once more when tab is pressed, so spaces are escaped inside the quotes
    private static string FishWords(IReadOnlyList<string> words) => FishQuoted(string.Join(' ', words.Select(w => w.Replace(" ", "\\ ", StringComparison.Ordinal))));

    private static string PowerQuoted(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";
}
