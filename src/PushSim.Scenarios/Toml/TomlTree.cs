using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace PushSim.Scenarios.Toml;

/// <summary>
/// Text to a tree of values with places. The library's own object mapper takes unknown and repeated keys in silence; this
/// reads its syntax tree instead and complains about every one, where it stands.
/// </summary>
internal sealed class TomlTree
{
    // Lines that are no TOML and left out, each with a complaint; more are no slips of the pen [1].
    private const int MostFaults = 20;

    private readonly Complaints _complaints;
    private readonly SourceFile _file;
    private readonly HashSet<int> _unread = [];
    private int _keys;

    private TomlTree(Complaints complaints, SourceFile file)
    {
        _complaints = complaints;
        _file = file;
    }

    /// <summary>The tree; null if the text cannot be read on (then the complaints say where). A line that is no TOML is complained of and left out.</summary>
    public static TomlTable? Parse(Complaints complaints, SourceFile file)
    {
        var tree = new TomlTree(complaints, file);
        if (tree.Read(file.Text) is not { } document || (document.HasErrors && ReadingsTable.IsOne(complaints, file)))
        {
            return null;
        }

        string[] lines = file.Text.ReplaceLineEndings("\n").Split('\n');
        for (int faults = 0; document.HasErrors; faults++)
        {
            TomlMender.Fault fault = TomlMender.Find(lines, document.Diagnostics.Where(d => d.Kind == DiagnosticMessageKind.Error).MinBy(d => (d.Span.Start.Line, d.Span.Start.Column))!);
            complaints.Error(new Place(file, fault.Line + 1, fault.Column + 1, fault.Length), fault.Message, fault.Help);
            string mended = tree._unread.Add(fault.Line) ? TomlMender.Mended(lines[fault.Line]) : "";
            if (faults == MostFaults || mended == lines[fault.Line])
            {
                return null;
            }

            lines[fault.Line] = mended;
            if (tree.Read(string.Join('\n', lines)) is not { } next)
            {
                return null;
            }

            document = next;
        }

        return tree.Build(document);
    }

    // null after a complaint
    private DocumentSyntax? Read(string text)
    {
        try
        {
            return SyntaxParser.Parse(text, _file.Name, validate: false);
        }
        catch (TomlException)
        {
            _complaints.Error(new Place(_file, 0, 0, 1), "this file cannot be read: it is nested too deep", $"at most {_complaints.Options.MaxDepth} levels of nesting are allowed");
            return null;
        }
        catch (ArgumentOutOfRangeException)
        {
            // the parser stumbles over half a pair, \ud800, or a number beyond Unicode
            _complaints.Error(new Place(_file, 0, 0, 1), "this file cannot be read: a \\u or \\U stands for no character", "write the character itself, or take the backslash out");
            return null;
        }
    }

    private TomlTable Build(DocumentSyntax document)
    {
        var root = new TomlTable(new Place(_file, 1, 1, 1), isExplicit: true);
        foreach (KeyValueSyntax pair in document.KeyValues)
        {
            Insert(root, pair, 1);
        }

        foreach (TableSyntaxBase header in document.Tables)
        {
            TomlTable? table = Open(root, header);
            foreach (KeyValueSyntax pair in header.Items)
            {
                if (table is not null)
                {
                    Insert(table, pair, 1);
                }
            }
        }

        return root;
    }

    private TomlTable? Open(TomlTable root, TableSyntaxBase header)
    {
        List<(string Key, Place Place)> path = Path(header.Name!);
        TomlTable? parent = Walk(root, path);
        if (parent is null || IsOneTooMany(path[^1].Place))
        {
            return null;
        }

        (string key, Place place) = path[^1];
        bool isOfList = header is TableArraySyntax || IsMeantAsList(path);
        var table = new TomlTable(place, isExplicit: true);
        switch (parent.Find(key))
        {
            case null:
                var array = new TomlArray(place, isOfHeaders: true);
                array.Items.Add(table);
                parent.Add(new TomlEntry(key, place, isOfList ? array : table));
                return table;
            case { Value: TomlArray { IsOfHeaders: true } list } when isOfList:
                list.Items.Add(table);
                return table;
            case { Value: TomlTable { IsExplicit: false } named } when !isOfList:
                named.IsExplicit = true;
                return named;
            case { Value: TomlTable again } old when !isOfList:
                // told once; its keys are read all the same
                Repeated(old, place);
                return again;
            case TomlEntry old:
                Repeated(old, place);
                return null;
        }
    }

    // one bracket in place of two: told, and read as it was meant
    private bool IsMeantAsList(List<(string Key, Place Place)> path)
    {
        string name = string.Join('.', path.Select(p => p.Key));
        if (!_complaints.Lists.Contains(name))
        {
            return false;
        }

        _complaints.Error(path[^1].Place, $"[{name}] needs double brackets, since there may be several", $"write [[{name}]]");
        return true;
    }

    private void Insert(TomlTable table, KeyValueSyntax pair, int depth)
    {
        List<(string Key, Place Place)> path = Path(pair.Key!);
        TomlTable? parent = Walk(table, path);
        if (parent is null || IsOneTooMany(path[^1].Place))
        {
            return;
        }

        (string key, Place place) = path[^1];
        if (parent.Find(key) is TomlEntry old)
        {
            Repeated(old, place);
            return;
        }

        if (_unread.Contains(place.Line - 1) && pair.Value is StringValueSyntax { Value: TomlMender.Unread })
        {
            // told already: what it would say is not missed
            parent.Meant.Add(key);
            return;
        }

        if (Convert(pair.Value!, depth + path.Count - 1) is TomlNode value)
        {
            parent.Add(new TomlEntry(key, place, value));
        }
    }

    private TomlTable? Walk(TomlTable table, List<(string Key, Place Place)> path)
    {
        if (path.Count > _complaints.Options.MaxDepth)
        {
            TooDeep(path[0].Place);
            return null;
        }

        for (int i = 0; i + 1 < path.Count; i++)
        {
            TomlEntry? entry = table.Find(path[i].Key);
            if (entry is null)
            {
                entry = new TomlEntry(path[i].Key, path[i].Place, new TomlTable(path[i].Place, isExplicit: false));
                table.Add(entry);
            }

            TomlTable? next = entry.Value as TomlTable ?? (entry.Value is TomlArray { IsOfHeaders: true } list ? list.Items[^1] as TomlTable : null);
            if (next is null)
            {
                Repeated(entry, path[i].Place);
                return null;
            }

            table = next;
        }

        return table;
    }

    private TomlNode? Convert(ValueSyntax value, int depth)
    {
        Place place = PlaceOf(value.Span);
        if (depth > _complaints.Options.MaxDepth)
        {
            TooDeep(place);
            return null;
        }

        switch (value)
        {
            case StringValueSyntax s when (s.Value ?? "").Length > _complaints.Options.MaxText:
                _complaints.Error(place, $"this text is longer than {_complaints.Options.MaxText} characters", "");
                return null;
            case StringValueSyntax s:
                return new TomlText(place, s.Value ?? "");
            case IntegerValueSyntax i:
                return new TomlNumber(place, i.Value, isWhole: true);
            case FloatValueSyntax f:
                return new TomlNumber(place, f.Value, isWhole: false);
            case BooleanValueSyntax b:
                return new TomlFlag(place, b.Value);
            case ArraySyntax a:
                return ConvertArray(a, place, depth);
            case InlineTableSyntax t:
                return ConvertTable(t, place, depth);
            default:
                return new TomlDate(place);
        }
    }

    private TomlArray ConvertArray(ArraySyntax array, Place place, int depth)
    {
        var result = new TomlArray(place, isOfHeaders: false);
        foreach (ArrayItemSyntax item in array.Items)
        {
            if (!IsOneTooMany(place) && item.Value is not null && Convert(item.Value, depth + 1) is TomlNode node)
            {
                result.Items.Add(node);
            }
        }

        return result;
    }

    private TomlTable ConvertTable(InlineTableSyntax table, Place place, int depth)
    {
        var result = new TomlTable(place, isExplicit: true);
        foreach (InlineTableItemSyntax item in table.Items)
        {
            if (item.KeyValue is not null)
            {
                Insert(result, item.KeyValue, depth + 1);
            }
        }

        return result;
    }

    private List<(string Key, Place Place)> Path(KeySyntax key)
    {
        List<(string, Place)> path = [(Name(key.Key), PlaceOf(key.Key!.Span))];
        foreach (DottedKeyItemSyntax item in key.DotKeys)
        {
            path.Add((Name(item.Key), PlaceOf(item.Key!.Span)));
        }

        return path;
    }

    private static string Name(BareKeyOrStringValueSyntax? key) => key switch
    {
        StringValueSyntax s => s.Value ?? "",
        BareKeySyntax b => b.Key?.Text ?? "",
        _ => "",
    };

    // Counts a key; true, after one complaint, once there are too many.
    private bool IsOneTooMany(Place place)
    {
        _keys++;
        if (_keys == _complaints.Options.MaxKeys + 1)
        {
            _complaints.Error(place, $"more than {_complaints.Options.MaxKeys} keys in one file", "");
        }

        return _keys > _complaints.Options.MaxKeys;
    }

    private void TooDeep(Place place) =>
        _complaints.Error(place, $"nested deeper than {_complaints.Options.MaxDepth} levels", "");

    private void Repeated(TomlEntry old, Place place) =>
        _complaints.Error(place, $"\"{SourceFile.Clean(old.Key, 60)}\" is already there in line {old.KeyPlace.Line}", "keep one of the two; several of a kind need double brackets, for example [[wheel]]");

    private Place PlaceOf(SourceSpan span)
    {
        bool isOneLine = span.End.Line == span.Start.Line;
        int length = isOneLine ? Math.Max(1, span.End.Column - span.Start.Column + 1) : 1;
        return new Place(_file, span.Start.Line + 1, span.Start.Column + 1, length);
    }
}
