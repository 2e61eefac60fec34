namespace PushSim.Cli.Shared;

/// <summary>Standard error that may be full or closed: what it does not take is lost, for there is nowhere left to tell it, and the work goes on.</summary>
internal sealed class ForgivingWriter(TextWriter inner) : TextWriter(CultureInfo.InvariantCulture)
{
    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => Try(() => inner.Write(value));

    public override void Write(char[] buffer, int index, int count) => Try(() => inner.Write(buffer, index, count));

    public override void Write(string? value) => Try(() => inner.Write(value));

    public override void WriteLine(string? value) => Try(() => inner.WriteLine(value));

    public override void Flush() => Try(inner.Flush);

    private static void Try(Action write)
    {
        try
        {
            write();
        }
        catch (IOException)
        {
            // see above
        }
    }
}
