using System.Text.RegularExpressions;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Notebook;

/// <summary>A column of the notebook as one file has it.</summary>
/// <param name="Index">Place in the row, from 0.</param>
/// <param name="Role">What it holds; null: something of the user's own.</param>
/// <param name="Name">Its head.</param>
/// <param name="Unit">Its unit, for messages; empty without one.</param>
/// <param name="Factor">SI per unit [1]; NaN where the head names no unit or an unknown one.</param>
internal sealed partial record NotebookColumn(int Index, NotebookRole? Role, string Name, string Unit, double Factor)
{
    /// <summary>Every column in the order in which a new notebook has them: head, role, and what else builders call it.</summary>
    public static readonly (string Head, NotebookRole Role, string[] Also)[] All =
    [
        ("when", NotebookRole.When, ["date", "time", "datum", "zeit", "date and time", "day"]),
        ("tyre", NotebookRole.Tyre, ["tire", "tyres", "tires", "reifen"]),
        ("robot", NotebookRole.Robot, ["robot file", "bot"]),
        ("mass_kg", NotebookRole.Mass, ["weight", "robot mass", "masse"]),
        ("motors", NotebookRole.Motors, ["motor"]),
        ("floor", NotebookRole.Floor, ["board", "surface", "boden"]),
        ("state", NotebookRole.State, ["floor state", "board state", "condition", "zustand"]),
        ("load_n", NotebookRole.Load, ["normal load", "normal force", "last"]),
        ("peak_n", NotebookRole.Peak, ["breakaway", "static", "max"]),
        ("sliding_n", NotebookRole.Sliding, ["slide", "plateau", "steady", "kinetic", "force"]),
        ("source", NotebookRole.Source, ["log", "source log", "file"]),
        ("note", NotebookRole.Note, ["notes", "remark", "remarks", "comment", "comments"]),
        ("left_out", NotebookRole.LeftOut, ["left out", "left out and why", "excluded", "skip"]),
    ];

    /// <summary>The head of a new notebook's column.</summary>
    public static string HeadOf(NotebookRole role) => All.First(c => c.Role == role).Head;

    /// <summary>Whether a column holds a number with a unit.</summary>
    public static bool IsQuantity(NotebookRole role) => role is NotebookRole.Mass or NotebookRole.Load or NotebookRole.Peak or NotebookRole.Sliding;

    /// <summary>The column of a head: "load_n", "Peak [gf]", "mass (g)".</summary>
    public static NotebookColumn Of(int index, string head)
    {
        string text = head.Trim().Trim('\'').Trim();
        string words = Words(text);
        if (Find(words) is NotebookRole exact && !IsQuantity(exact))
        {
            return new NotebookColumn(index, exact, text, "", 1.0);
        }

        Match bracket = Bracket().Match(text);
        int cut = words.LastIndexOf(' ');
        (string name, string unit) = bracket.Success ? (Words(text.Remove(bracket.Index, bracket.Length)), bracket.Groups[1].Value.Trim()) : cut > 0 ? (words[..cut], words[(cut + 1)..]) : (words, "");
        if (Find(name) is not NotebookRole role || !IsQuantity(role))
        {
            return new NotebookColumn(index, Find(words) ?? (bracket.Success ? Find(name) : null), text, "", Find(words) is { } r && IsQuantity(r) ? double.NaN : 1.0);
        }

        double factor = role == NotebookRole.Mass ? UnitTable.TryFind(Dimension.Mass, unit, out Unit mass) ? mass.Factor : double.NaN : unit.Length == 0 ? double.NaN : LogColumn.ForceFactor(unit);
        return new NotebookColumn(index, role, text, unit, factor);
    }

    private static NotebookRole? Find(string words)
    {
        foreach ((string head, NotebookRole role, string[] also) in All)
        {
            if (words == Bare(head, role) || also.Contains(words))
            {
                return role;
            }
        }

        return null;
    }

    // "load_n" is "load" with its unit
    private static string Bare(string head, NotebookRole role) => IsQuantity(role) ? head[..head.IndexOf('_', StringComparison.Ordinal)] : Words(head);

    private static string Words(string text) => string.Join(' ', WordBreak().Split(text.ToLowerInvariant()).Where(w => w.Length > 0));

    [GeneratedRegex(@"[\[(]([^\])]*)[\])]")]
    private static partial Regex Bracket();

    [GeneratedRegex(@"[^\p{L}\p{Nd}]+")]
    private static partial Regex WordBreak();
}
