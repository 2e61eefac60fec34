using System.Text.RegularExpressions;
using PushSim.Scenarios.Keys;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace PushSim.Scenarios.Editing;

/// <summary>
/// Changes one value in the text of a file: everything else, comments, order, blanks and line ends, stays to the letter. Places are those of the syntax tree that reading
/// uses, lines and columns from 1.
/// </summary>
public static partial class EditText
{
    /// <summary>The text with another value at a place; null if no value of that key begins there, as where the place is that of a part of the shelf.</summary>
    /// <param name="text">The file's text, without byte-order mark.</param>
    /// <param name="line">Line of the value [1].</param>
    /// <param name="column">Column of the value [1].</param>
    /// <param name="key">The key.</param>
    /// <param name="value">The new value, written without quotes.</param>
    public static string? Replace(string text, int line, int column, KeyDefinition key, string value)
    {
        if (Parse(text) is not { } document || Find(document, line - 1, column - 1) is not { } pair || LastName(pair.Key!) is not { } name
            || (name != key.Name && !name.EndsWith("." + key.Name, StringComparison.Ordinal)))
        {
            return null;
        }

        (int start, int end) = Span(text, pair.Value!.Span);
        string old = text[start..end];
        return pair.Value is ArraySyntax or InlineTableSyntax ? null : $"{text[..start]}{Literal(key, value, old)}{text[end..]}";
    }

    /// <summary>The text with a key more: at the end of its table, or with a table more at the end of the text.</summary>
    /// <param name="text">The file's text, without byte-order mark.</param>
    /// <param name="header">The table's name, for example "chassis" or "opponent.override"; empty for the top.</param>
    /// <param name="part">Of several tables of that name the one whose "name" this is; empty for a single table.</param>
    /// <param name="name">The key as it is written, with quotes if it needs them.</param>
    /// <param name="key">The key.</param>
    /// <param name="value">Its value, written without quotes.</param>
    /// <returns>Null if there is no such table and none can be added.</returns>
    public static string? Insert(string text, string header, string part, string name, KeyDefinition key, string value)
    {
        if (Parse(text) is not { } document)
        {
            return null;
        }

        string end = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : text.Contains('\n', StringComparison.Ordinal) || !text.Contains('\r', StringComparison.Ordinal) ? "\n" : "\r";
        string written = $"{name} = {Literal(key, value, "")}";
        TableSyntaxBase[] tables = [.. document.Tables.Where(t => FullName(t.Name!) == header && (part.Length == 0 || NameOf(t) == part))];
        if (tables.Length > 1)
        {
            return null;
        }

        if (tables.Length == 1)
        {
            KeyValueSyntax? last = tables[0].Items.LastOrDefault();
            (int _, int behind) = Span(text, last?.Value?.Span ?? tables[0].CloseBracket!.Span);
            int at = EndOfLine(text, behind);
            return $"{text[..at]}{end}{written}{text[at..]}";
        }

        // a table that another way of writing has, or a part that is not there
        if (part.Length > 0 || HasInline(document, header))
        {
            return null;
        }

        string gap = text.Length == 0 || text.EndsWith('\n') || text.EndsWith('\r') ? "" : end;
        return $"{text}{gap}{end}[{header}]{end}{written}{end}";
    }

    /// <summary>A value as a file has it behind the equals sign.</summary>
    /// <param name="key">The key.</param>
    /// <param name="value">The value without quotes.</param>
    /// <param name="old">What stands there now, whose way of writing is kept where it can be; may be empty.</param>
    internal static string Literal(KeyDefinition key, string value, string old)
    {
        string plain = value.Trim();
        bool isQuoted = old.StartsWith('"') || old.StartsWith('\'');
        bool isBare = key.Kind switch
        {
            KeyKind.Flag => plain is "true" or "false",
            KeyKind.Whole => Whole().IsMatch(plain),
            KeyKind.Quantity => !isQuoted && Number().IsMatch(plain),
            _ => false,
        };
        if (isBare)
        {
            return plain;
        }

        return old.StartsWith('\'') && !plain.Contains('\'', StringComparison.Ordinal) && !plain.Any(char.IsControl) ? $"'{plain}'" : $"\"{Escaped(plain)}\"";
    }

    private static DocumentSyntax? Parse(string text)
    {
        try
        {
            // lines of old editors end in a carriage return alone
            DocumentSyntax document = SyntaxParser.Parse(text.Contains('\n', StringComparison.Ordinal) ? text : text.Replace('\r', '\n'), "text", validate: false);
            return document.HasErrors ? null : document;
        }
        catch (Exception e) when (e is TomlException or ArgumentOutOfRangeException)
        {
            return null;
        }
    }

    private static KeyValueSyntax? Find(DocumentSyntax document, int line, int column)
    {
        return document.KeyValues.Concat(document.Tables.SelectMany(t => t.Items)).SelectMany(Within)
            .FirstOrDefault(p => p.Value is { } v && v.Span.Start.Line == line && v.Span.Start.Column == column);

        static IEnumerable<KeyValueSyntax> Within(KeyValueSyntax pair) => [pair, .. Inside(pair.Value)];

        static IEnumerable<KeyValueSyntax> Inside(SyntaxNode? value) => value switch
        {
            InlineTableSyntax t => t.Items.Where(i => i.KeyValue is not null).SelectMany(i => Within(i.KeyValue!)),
            ArraySyntax a => a.Items.SelectMany(i => Inside(i.Value)),
            _ => [],
        };
    }

    private static bool HasInline(DocumentSyntax document, string header)
    {
        int dot = header.LastIndexOf('.');
        (string around, string own) = dot < 0 ? ("", header) : (header[..dot], header[(dot + 1)..]);
        IEnumerable<KeyValueSyntax> pairs = around.Length == 0 ? document.KeyValues : document.Tables.Where(t => FullName(t.Name!) == around).SelectMany(t => t.Items);
        return pairs.Any(p => NameOf(p.Key!.Key) == own) || document.KeyValues.Any(p => NameOf(p.Key!.Key) == header.Split('.')[0]);
    }

    // from here to behind the last letter
    private static (int Start, int End) Span(string text, SourceSpan span) => (Offset(text, span.Start.Line, span.Start.Column), Offset(text, span.End.Line, span.End.Column) + 1);

    private static int Offset(string text, int line, int column)
    {
        char end = text.Contains('\n', StringComparison.Ordinal) ? '\n' : '\r';
        int at = 0;
        for (int i = 0; i < line; i++)
        {
            at = text.IndexOf(end, at) + 1;
        }

        return at + column;
    }

    private static int EndOfLine(string text, int from)
    {
        int at = text.AsSpan(from).IndexOfAny('\r', '\n');
        return at < 0 ? text.Length : from + at;
    }

    private static string FullName(KeySyntax key) => string.Join('.', key.DotKeys.Select(d => NameOf(d.Key)).Prepend(NameOf(key.Key)));

    private static string LastName(KeySyntax key) => key.DotKeys.LastOrDefault() is { } last ? NameOf(last.Key) : NameOf(key.Key);

    private static string NameOf(TableSyntaxBase table) =>
        table.Items.FirstOrDefault(p => p.Key is { DotKeys.ChildrenCount: 0 } k && NameOf(k.Key) == "name")?.Value is StringValueSyntax s ? (s.Value ?? "").Trim() : "";

    private static string NameOf(BareKeyOrStringValueSyntax? key) => key switch
    {
        StringValueSyntax s => s.Value ?? "",
        BareKeySyntax b => b.Key?.Text ?? "",
        _ => "",
    };

    private static string Escaped(string text)
    {
        var escaped = new System.Text.StringBuilder();
        foreach (char c in text)
        {
            _ = c is '"' or '\\' ? escaped.Append('\\').Append(c)
                : char.IsControl(c) ? escaped.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}")
                : escaped.Append(c);
        }

        return escaped.ToString();
    }

    [GeneratedRegex(@"^[+-]?(0|[1-9][0-9]*)\z")]
    private static partial Regex Whole();

    [GeneratedRegex(@"^[+-]?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?\z")]
    private static partial Regex Number();
}
