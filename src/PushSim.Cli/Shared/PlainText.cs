namespace PushSim.Cli.Shared;

/// <summary>Text from files and arguments on its way to the terminal.</summary>
internal static class PlainText
{
    /// <inheritdoc cref="SafeCell.Plain"/>
    public static string Of(string text) => SafeCell.Plain(text);
}
