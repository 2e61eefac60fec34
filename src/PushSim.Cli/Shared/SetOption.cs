namespace PushSim.Cli.Shared;

/// <summary>`--set KEY=VALUE` of every command that reads robots or scenarios: values that stand in place of those of the files.</summary>
internal sealed class SetOption
{
    private readonly Option<string[]> _set = new("--set")
    {
        Description = "A value in place of the file's, e.g. \"chassis.mass=1.3 kg\"; * stands for every name; repeatable.", HelpName = "KEY=VALUE", DefaultValueFactory = _ => [],
    };

    private readonly Option<string?> _precision = new("--precision")
    {
        Description = "Number type of drawn matches: single (usual) or double; the key is numerics.draw_precision.", HelpName = "TYPE",
    };

    /// <param name="command">The command.</param>
    /// <param name="draws">Whether it draws matches, so that it takes --precision.</param>
    public void AddTo(Command command, bool draws = false)
    {
        if (draws)
        {
            command.Options.Add(_precision);
            _precision.Validators.Add(found =>
            {
                if (found.GetValueOrDefault<string?>() is string text and not "single" and not "double")
                {
                    found.AddError($"--precision takes single or double, not \"{text}\"");
                }
            });
        }

        command.Options.Add(_set);
        _set.Validators.Add(found =>
        {
            foreach (string text in found.GetValueOrDefault<string[]>() ?? [])
            {
                if (Split(text) is null)
                {
                    found.AddError($"--set takes KEY=VALUE, for example \"chassis.mass=1.3 kg\" or floor.dust=0.2, not \"{text}\"");
                }
            }
        });
    }

    /// <summary>What is set anew, in the order given; the last value of a key counts.</summary>
    public IReadOnlyList<(string Path, string Value)> Of(ParseResult parsed) =>
    [
        .. (parsed.GetValue(_set) ?? []).Select(Split).OfType<(string, string)>(),
        .. parsed.GetResult(_precision) is not null && parsed.GetValue(_precision) is string precision ? [("numerics.draw_precision", precision)] : Array.Empty<(string, string)>(),
    ];

    /// <summary>The same as limits of reading have it.</summary>
    public ReadOptions Read(ParseResult parsed) => new() { Set = Of(parsed), Garage = GarageOption.Of(parsed) };

    private static (string Path, string Value)? Split(string text)
    {
        int at = text.IndexOf('=', StringComparison.Ordinal);
        (string path, string value) = at < 0 ? ("", "") : (text[..at].Trim(), text[(at + 1)..].Trim());
        return path.Length > 0 && value.Length > 0 ? (path, value) : null;
    }
}
