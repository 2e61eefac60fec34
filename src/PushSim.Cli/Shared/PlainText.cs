using Spectre.Console;

namespace PushSim.Cli.Shared;

/// <summary>Text from files and arguments on its way to the terminal.</summary>
internal static class PlainText
{
    /// <inheritdoc cref="SafeCell.Plain"/>
    public static string Of(string text) => SafeCell.Plain(text);

    /// <summary>The same for a line with marks of style, in which brackets of the text stay brackets.</summary>
    public static string Marked(string text) => Markup.Escape(Of(text));
}
