namespace PushSim.Cli.Shared;

/// <summary>A writer that drops blanks at the end of each line, which tables leave there.</summary>
internal sealed class TrimmedWriter(TextWriter inner) : TextWriter(CultureInfo.InvariantCulture)
{
    private readonly StringBuilder _blanks = new();

    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value)
    {
        if (value == ' ')
        {
            _blanks.Append(value);
            return;
        }

        if (value is not ('\n' or '\r'))
        {
            inner.Write(_blanks);
        }

        _blanks.Clear();
        inner.Write(value);
    }

    public override void Flush() => inner.Flush();
}
